"""Taking off: the quantities that a job needs.

Takes: rooms as surveyed and as laid, and the cutting engine. Gives: what each lining takes (`lining.py`), each room
(`room.py`), the job with its cutting plans (`job.py`), measured quantities for a tender (`measured.py`), load on the
substrate (`load.py`) and thermal movement (`movement.py`).
Deliberately does not: know a price, judge a figure (the checks do), lay a panel.
"""
