#!/bin/sh
# roomspec on any CI server, from the root of a repository of jobs. Reports go to reports/.
# Exits 1 where a file is not in the one format or a finding is at least FAIL_ON, 2 where something could not be read.
set -eu

if ! command -v roomspec >/dev/null 2>&1; then
  : "${ROOMSPEC_PACKAGE:?say what pip is to install: a wheel, a folder, or a git address with its commit}"
  python3 -m venv .roomspec-venv
  .roomspec-venv/bin/pip install --quiet "$ROOMSPEC_PACKAGE"
  PATH=$PWD/.roomspec-venv/bin:$PATH
fi

mkdir -p reports
worst=0
roomspec format --check . || worst=$?
code=0
roomspec check . --fail-on "${FAIL_ON:-error}" \
  --as text --as sarif:reports/roomspec.sarif --as junit:reports/roomspec.xml || code=$?
if [ "$code" -gt "$worst" ]; then worst=$code; fi
exit "$worst"
