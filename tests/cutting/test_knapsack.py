"""The exact knapsack, on which every bound rests, against all fillings written out."""

from itertools import product
from unittest.mock import patch

from hypothesis import given, settings
from hypothesis import strategies as st

from roomspec.cutting import knapsack
from roomspec.cutting.knapsack import Item, fill, most_value, tabulate

items_of_few_sizes = st.lists(
    st.builds(Item, st.integers(3, 40), st.integers(0, 30), st.integers(0, 4), st.sampled_from([0, 0, 1, 2])),
    max_size=5,
)


def best_by_hand(items: list[Item], room: int) -> int:
    """The greatest value of any filling."""
    best = 0
    for times in product(*(range(min(1, item.limit) + 1 if item.side else item.limit + 1) for item in items)):
        taken = list(zip(items, times, strict=True))
        sides = [item.side for item, count in taken if count and item.side]
        if len(sides) == len(set(sides)) and sum(item.size * count for item, count in taken) <= room:
            best = max(best, sum(item.value * count for item, count in taken))
    return best


@settings(max_examples=150, deadline=None)
@given(items_of_few_sizes, st.integers(1, 60), st.sampled_from([7, 20_000]), st.integers(0, 40))
def test_filling_is_the_best(items: list[Item], room: int, finest: int, beat: int) -> None:
    """On a fine grid or a coarse one: the best filling above `beat`, of true size, or the proof that there is none."""
    items = [item if not item.side else item._replace(limit=1) for item in items]
    with patch.object(knapsack, "FINEST", finest):
        table = tabulate(60, items)
        filling = fill(table, room, beat)
    best = best_by_hand(items, room)
    assert most_value(table, room) >= best
    if best > beat:
        assert filling.value == filling.most == best
        assert sum(items[index].size * times for index, times in filling.taken) <= room
        assert sum(items[index].value * times for index, times in filling.taken) == best
    else:
        assert filling.taken == ()
        assert best <= filling.most
