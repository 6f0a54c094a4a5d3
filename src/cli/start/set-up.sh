#!/bin/sh
# Once in every clone: git keeps these settings to itself and can't bring them along.
set -eu
cd "$(dirname "$0")/.."

git config diff.framing.textconv 'storyrod facts'
git config diff.framing.cachetextconv true
git config diff.framing.xfuncname '^([a-z]+( [A-Za-z"][^ ]*)*)'

# Git counts the folder of its hooks from its own top.
hooks=$(git rev-parse --show-prefix).githooks
cd "$(git rev-parse --show-toplevel)"
standing=$(git config core.hooksPath || git rev-parse --git-path hooks)
others=$(ls "$standing" 2> /dev/null | grep -v '\.sample$' || true)
if [ "$standing" = "$hooks" ] || [ -z "$others" ]; then
    git config core.hooksPath "$hooks"
else
    echo "$standing has hooks already, which stay: let its pre-commit call $hooks/pre-commit" >&2
fi
