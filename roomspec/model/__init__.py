"""The job as frozen values.

Gives: walls, openings, products, methods, rooms, the job; lengths in nanometres, money and rates as Decimal.
They are kept from the garbage collector (`gc=False`): values made once, of values, can form no cycle.
Deliberately does not: know where a fact was written (`compile` keeps the origins), compute any figure.
"""
