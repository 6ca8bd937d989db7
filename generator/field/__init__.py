"""What is looked at on the lawn: the inspection, hold or go, the key of grasses, the nitrogen of a record."""
