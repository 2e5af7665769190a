"""Drawings: elevations, plans and cutting drawings as SVG, for A4 and A3 landscape.

Takes: a job laid, taken off and cut (`analysis.engine.Estimated`). Gives: `job_drawings.draw_job`, a `Drawing` a sheet.
Lines follow ISO 128-23:1999 (line group 0.35), dimensions ISO 129-1:2018, scales ISO 5455:1979, sheets ISO 5457:1999,
title blocks ISO 7200:2004, lettering ISO 3098-1; these from memory. What is built stands in the SVG in millimetres as
built, within a group that scales it, so that it can be read back exactly; all else is in millimetres of paper.
An SVG holds no ids, styles, scripts or links: any number of them may stand in one page.
Deliberately does not: write files, know the time, compute quantities.
"""
