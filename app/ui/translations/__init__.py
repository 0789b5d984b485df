"""Catalogues of the window's words: the .ts is edited, the .qm is made from it."""
