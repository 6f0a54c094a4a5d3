#!/bin/sh
# Puts the program onto a runner that does not have it. It is built there, which takes minutes: keep cargo's folder from
# run to run, or take an image with the program in it.
set -eu

if command -v storyrod > /dev/null; then
    exit 0
fi
if [ -z "${STORYROD_SOURCE:-}" ]; then
    echo "set the variable STORYROD_SOURCE to the address of a git repository with Storyrod in it" >&2
    exit 1
fi
cargo install --locked --git "$STORYROD_SOURCE" storyrod
