#!/bin/sh
# Before a commit: the specs must pass lint and be in the one style, as they will be committed and not as they lie on
# disk. `git commit --no-verify` goes round it.
set -eu

if ! command -v storyrod > /dev/null; then
    echo "pre-commit: storyrod is not on the path, so nothing was checked" >&2
    exit 1
fi

# The folder that this hook was made for, which may lie below the top.
top=$(cd "$(git rev-parse --show-toplevel)" && pwd -P)
own=$(cd "$(dirname "$0")/.." && pwd -P)
case "$own" in
    "$top/.git") below= ;;
    "$top"/*) below=${own#"$top/"} ;;
    *) below= ;;
esac

# write_out REPOSITORY TREE FOLDER: every file of a tree, those of its submodules as far as they are here included.
write_out() (
    # A walk heeds `.gitignore` where a repository is.
    mkdir -p "$3/.git"
    cd "$1"
    export GIT_INDEX_FILE="$3/.git/index"
    git read-tree "$2"
    git checkout-index --all --prefix="$3/"
    git -c core.quotePath=false ls-files --stage | grep '^160000 ' | while read -r _ commit _ path; do
        # What git tells a hook is about the repository outside.
        unset $(git rev-parse --local-env-vars)
        git -C "$path" cat-file -e "$commit" 2> /dev/null || continue
        write_out "$path" "$commit" "$3/$path"
    done
)

files=$(mktemp -d)
trap 'rm -rf "$files"' EXIT
trap 'exit 1' HUP INT TERM
tree=$(git write-tree)
write_out "$top" "$tree" "$files"

# Without a spec there is nothing to judge, if no configuration leads elsewhere.
[ -d "$files/$below" ] || exit 0
cd "$files/$below"
if [ -z "$(find . -name '*.framing')" ] && ! grep -qs '^ *paths' storyrod.toml; then
    exit 0
fi

passed=true
storyrod format --check || passed=false
storyrod lint --format text || passed=false
if ! $passed; then
    echo "pre-commit: mend this${below:+ in $below} and \`git add\` it; \`storyrod format\` writes the one style" >&2
    exit 1
fi
