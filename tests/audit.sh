#!/bin/sh
# Reads one page of each kind with the W3C's HTML checker (npm package vnu-jar, MIT; needs Java and npm, so it stands
# apart from `make test`). Prints what is wrong and exits 1; prints one line and exits 0 when nothing is.
#   tests/audit.sh [SITE]    SITE is a built site, ./site without it
set -eu
here=$(cd "$(dirname "$0")/.." && pwd)
site=${1:-$here/site}
for needed in java npm; do
  command -v "$needed" >/dev/null || { echo "the audit needs $needed; install it, or leave the audit out" >&2; exit 2; }
done
[ -f "$site/index.html" ] || { echo "no built site in $site; run make site first" >&2; exit 2; }

tools=$(mktemp -d)
trap 'rm -rf "$tools"' EXIT
(cd "$tools" && npm pack --silent vnu-jar >/dev/null && tar -xzf vnu-jar-*.tgz)
jar=$(find "$tools/package" -name 'vnu.jar' | head -n 1)

# The pages come from the tests, so that both look at the same ones.
cd "$here"
python=.venv/bin/python
[ -x "$python" ] || python=python3
pages=$("$python" -c 'from tests.site.reader import KINDS; print("\n".join(KINDS.values()))')
cd "$site"

# Faults of the theme's own markup, none of which a reader meets:
# - `autocomplete` on the hidden checkboxes that open the drawer and the search box; the theme writes both.
known='An .?input.? element with a .?type.? attribute whose value is .?checkbox.? must not have an .?autocomplete.? attribute'
known="$known|Attribute .?autocomplete.? is only allowed when the input type is"
# - `tabindex=""` on the label of a group in the drawer (About), from the theme's nav-item.
known="$known|attribute .tabindex. on element .label.: The empty string"
found=$(printf '%s\n' "$pages" | xargs java -jar "$jar" --errors-only --format gnu 2>&1 | grep -Ev "$known" || true)
if [ -n "$found" ]; then
  printf '%s\n' "$found" | sed "s|^\"file:$site/||; s|\":|:|"
  exit 1
fi
echo "audit: $(printf '%s\n' "$pages" | wc -l | tr -d ' ') pages, nothing wrong"
