"""A front door: cards in groups, each leading to a page. Pages of this kind are made by the views of what they lead to."""
