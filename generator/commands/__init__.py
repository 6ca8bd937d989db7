"""Commands of `swardbook` that are more than a few lines, one file each; `cli.py` lists them."""
