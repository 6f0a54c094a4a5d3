"""JUnit's XML as others read it: a published schema, and a library that knows the format."""

import os
import subprocess
from pathlib import Path

import junitparser
import pytest
import xmlschema

ROOT = Path(__file__).resolve().parents[2]
# From the source distribution of pytest 8.3.4; its license stands at its beginning.
SCHEMA = xmlschema.XMLSchema(str(ROOT / "tests/data/junit-10.xsd"))


@pytest.fixture
def folder(tmp_path):
    cabin = (ROOT / "grammar/samples/first.framing").read_text()
    (tmp_path / "clean.framing").write_text(cabin)
    (tmp_path / "wrong.framing").write_text(cabin.replace("2x10 SPF", "2x12 SPF"))
    (tmp_path / "odd & <é>.framing").write_text('project "\x1b[31m ]]> \uffff"\nbeem "B1\n  topp 1\'\n')
    return tmp_path


def junit_of(folder, *arguments):
    command = [os.environ["STORYROD"], "lint", "--format", "junit", *arguments]
    path = folder / "report.xml"
    path.write_bytes(subprocess.run(command, cwd=folder, stdout=subprocess.PIPE, check=False).stdout)
    return path


@pytest.mark.parametrize("arguments", [(), ("--fail-on", "advice"), ("none.framing", "."), ("none.framing",)])
def test_the_report_is_valid(folder, arguments):
    SCHEMA.validate(str(junit_of(folder, *arguments)))


def test_the_schema_refuses_something(folder):
    path = junit_of(folder)
    path.write_text(path.read_text().replace("<testcase name=", "<testcase nick=", 1))
    assert not SCHEMA.is_valid(str(path))


def test_a_reader_finds_what_failed_and_what_passed(folder):
    report = junitparser.JUnitXml.fromfile(str(junit_of(folder, "none.framing", ".")))
    suites = {suite.name: suite for suite in report}
    [passed] = suites["clean.framing"]
    assert passed.is_passed
    [failed] = suites["wrong.framing"]
    assert failed.name == "stack-does-not-close: joists J1"
    assert failed.result[0].text.startswith("wrong.framing:39:17: error: the tops of walls W1 and W2 are 2\" too high")
    [error] = suites["not usable"]
    assert isinstance(error.result[0], junitparser.Error)
    for attribute in ("tests", "failures", "errors"):
        assert getattr(report, attribute) == sum(getattr(suite, attribute) for suite in report)
