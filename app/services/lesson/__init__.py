"""The lesson report: what was done in some days, for the teacher.

``gathering`` reads it out of the journal as plain values, ``figures`` draws, ``web_page``
and ``printed`` lay it out as one HTML file and as PDF, ``service`` is the way in.
"""
