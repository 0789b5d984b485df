"""Clips to be shared: cut, levelled, with a title, and with nothing private in them."""
