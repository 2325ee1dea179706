#!/bin/sh
# Makes cases.json and reference.json again and compares them with the committed files.
#   run.sh           compare only; exit 1 on a difference, 2 when a tool is missing
#   run.sh --write   replace the committed files
set -eu
cd "$(dirname "$0")"
python=${PYTHON:-/usr/bin/python3}
export PYTHONDONTWRITEBYTECODE=1 OPENBLAS_NUM_THREADS=1

missing=
[ -x "$python" ] || command -v "$python" >/dev/null 2>&1 || { echo "missing: $python (Debian: apt-get install python3)" >&2; exit 2; }
for module in numpy scipy statsmodels mpmath; do
  "$python" -c "import $module" 2>/dev/null || { echo "missing: Python module $module (Debian: apt-get install python3-$module)" >&2; missing=1; }
done
if command -v Rscript >/dev/null 2>&1; then
  Rscript --vanilla -e 'if (!requireNamespace("MASS", quietly = TRUE)) quit(status = 1)' >/dev/null 2>&1 ||
    { echo "missing: R package MASS (Debian: apt-get install r-cran-mass)" >&2; missing=1; }
else
  echo "missing: Rscript (Debian: apt-get install r-base-core r-cran-mass)" >&2
  missing=1
fi
[ -z "$missing" ] || exit 2

fresh=$(mktemp -d)
trap 'rm -rf "$fresh"' EXIT
"$python" cases.py "$fresh/cases.json"
if [ "${1:-}" = --write ]; then
  cp "$fresh/cases.json" cases.json
elif ! cmp -s cases.json "$fresh/cases.json"; then
  echo "cases.json differs from what cases.py makes" >&2
  exit 1
fi
"$python" selfcheck.py
"$python" reference.py cases.json "$fresh/reference.json"
if [ "${1:-}" = --write ]; then
  cp "$fresh/reference.json" reference.json
  exit 0
fi
"$python" compare.py reference.json "$fresh/reference.json"
