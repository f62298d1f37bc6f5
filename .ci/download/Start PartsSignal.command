#!/bin/sh
# Starts PartsSignal from wherever this folder was put; the browser opens by itself.
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# You allowed this file to run. Without this, macOS asks again for each of the program's own files.
xattr -dr com.apple.quarantine "$here" 2>/dev/null
exec "$here/program/partssignal" bench "$@"
