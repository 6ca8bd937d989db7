"""What a lawn is called in lists and records: a code, never a name."""

import re

LAWN_CODE = re.compile(r"[A-Za-z0-9][A-Za-z0-9-]{0,23}")
NAMES_NOBODY = "use letters, digits and hyphens only, such as 'TL-014'; a name or an address does not belong here"
