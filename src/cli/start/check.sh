#!/bin/sh
# What every change must pass. `ci/check.sh BASE` also tells what changed since the revision BASE, for the comment on a
# review. Reports go into `reports`. The exit code is 0 when everything passes.
set -eu
cd "$(dirname "$0")/.."
base=${1:-}

rm -rf reports
mkdir reports
passed=true

storyrod format --check || passed=false
storyrod lint --format text || passed=false
for report in sarif:lint.sarif junit:lint.xml markdown:lint.md; do
    storyrod lint --format "${report%%:*}" > "reports/${report#*:}" 2> /dev/null || passed=false
done

if [ -n "$base" ]; then
    # Only what this side did since they parted. What fails by it was said above.
    since=$(git merge-base "$base" HEAD)
    storyrod compare --rev "$since" --format markdown > reports/changes.md || [ $? -eq 1 ]
fi

$passed
