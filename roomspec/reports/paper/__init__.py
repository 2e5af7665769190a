"""Documents as values, and how they are put on paper: sheets in, a page or a PDF out.

Gives: `sheet.Sheet` (headings, tables, lists, drawings), `numerals.Numerals` (figures and dates by the job's locale),
`page` (one self-contained HTML page), `typeset` and `pdf`, `rows_csv`.
Deliberately does not: know what a quotation is, compute a figure, open a file.
"""
