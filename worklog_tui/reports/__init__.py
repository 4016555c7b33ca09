"""Reports: the model in, text out."""
