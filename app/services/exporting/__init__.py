"""Everything in the journal can leave it, in open formats.

One module a format; :mod:`app.services.exporting.service` chooses and writes. What each
file holds is described for players in ``app/guide/open_formats.md``.
"""
