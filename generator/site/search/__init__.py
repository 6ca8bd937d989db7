"""What the reader's search goes by: each page as a record of words, written as one script that loads when it is asked for."""
