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


@pytest.mark.parametrize("shard", ["1/3", "2/3", "3/3"])
def test_the_report_of_a_shard_is_valid(folder, shard):
    SCHEMA.validate(str(junit_of(folder, "--shard", shard, "none.framing", ".")))


def test_gathered_shards_are_read_as_a_whole_run(folder):
    whole = junit_of(folder, "none.framing", ".").read_bytes()
    results = []
    for number in range(1, 4):
        path = junit_of(folder, "--shard", f"{number}/3", "none.framing", ".")
        results.append(path.rename(folder / f"{number}.xml"))
    command = [os.environ["STORYROD"], "gather", *results]
    gathered = subprocess.run(command, stdout=subprocess.PIPE, check=False)
    assert (gathered.returncode, gathered.stdout) == (2, whole)
    report = junitparser.JUnitXml.fromstring(gathered.stdout)
    assert (report.tests, report.errors) == (sum(suite.tests for suite in report), 1)


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
