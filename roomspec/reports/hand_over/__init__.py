"""What is handed over: quotation, order, fitters' sheets, survey sheet; lists as CSV; a workbook.

Takes: a snapshot's estimate (`given.HandOver`). Gives: sheets (`reports/paper`), CSV text, bytes of a workbook.
Deliberately does not: reckon a quantity or a price, ask for the date, draw, open a file.
"""
