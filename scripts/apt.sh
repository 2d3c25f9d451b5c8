#!/bin/sh
# apt.sh PACKAGE REASON: installs a Debian package where this user may, else says how.
set -eu
if [ "$(id -u)" = 0 ]; then as=
elif sudo -n true 2> /dev/null; then as="sudo -n"
else
  echo "$2: install it with 'sudo apt-get install $1', then run make again." >&2
  exit 1
fi
echo "Installing Debian's $1 ..."
export DEBIAN_FRONTEND=noninteractive
told=$($as apt-get update -qq 2>&1 && $as apt-get install -qq --yes --no-install-recommends "$1" 2>&1) || {
  echo "$told" >&2
  exit 1
}
