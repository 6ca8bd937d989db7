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

# Faults of the theme's own markup, none of which a reader meets (`.{0,4}` stands for a curly quote in any locale):
# - `autocomplete` on the hidden checkboxes that open the drawer and the search box; the theme writes both.
known='An .{0,4}input.{0,4} element with a .{0,4}type.{0,4} attribute whose value is .{0,4}checkbox.{0,4} must not have an .{0,4}autocomplete.{0,4} attribute'
known="$known|Attribute .{0,4}autocomplete.{0,4} is only allowed when the input type is"
# - `tabindex=""` on the label of a group in the drawer (About), from the theme's nav-item.
known="$known|attribute .{1,4}tabindex.{1,4} on element .{1,4}label.{1,4}: The empty string"
found=$(printf '%s\n' "$pages" | xargs java -jar "$jar" --errors-only --format gnu 2>&1 | grep -Ev "$known" || true)
if [ -n "$found" ]; then
  printf '%s\n' "$found" | sed "s|^\"file:$site/||; s|\":|:|"
  exit 1
fi
echo "audit: $(printf '%s\n' "$pages" | wc -l | tr -d ' ') pages, nothing wrong"
