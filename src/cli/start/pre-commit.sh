#!/bin/sh
# Before a commit: the specs must pass lint and be in the one style, as they will be committed and not as they lie on
# disk. `git commit --no-verify` goes round it.
set -eu

if ! command -v storyrod > /dev/null; then
    echo "pre-commit: storyrod is not on the path, so nothing was checked" >&2
    exit 1
fi
[ -n "$(git ls-files -- '*.framing')" ] || exit 0

# What the index holds, in a folder of its own.
index=$(mktemp -d)
trap 'rm -rf "$index"' EXIT
git ls-files -z -- '*.framing' '*.toml' | git checkout-index -z --stdin --prefix="$index/"
cd "$index"

passed=true
storyrod format --check || passed=false
storyrod lint --format text || passed=false
if ! $passed; then
    echo "pre-commit: mend this and \`git add\` it; \`storyrod format\` writes the one style" >&2
    exit 1
fi
