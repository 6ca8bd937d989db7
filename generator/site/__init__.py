"""The site of a book: pages, their parts, what search reads, and the frame that the theme lays round them."""
