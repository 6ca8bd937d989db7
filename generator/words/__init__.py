"""What the engine found, in words: figures in both systems, reasons as sentences, figures that a text quotes."""
