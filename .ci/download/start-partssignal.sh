#!/bin/sh
# Starts PartsSignal from wherever this folder was put; the browser opens by itself.
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
"$here/program/partssignal" bench "$@"
status=$?
# A window that closes at once hides what went wrong. Ctrl+C (130) is how people stop it.
if [ "$status" -ne 0 ] && [ "$status" -ne 130 ] && [ -t 0 ]; then
  printf '\nPartsSignal stopped. Press Enter to close this window. '
  read -r _
fi
exit "$status"
