"""Reachability and rings of couplets, held against networkx on random keys."""

from __future__ import annotations

import networkx
from hypothesis import given
from hypothesis import strategies as st

from keytool.library.graph import raw_goes, reached, reading_order, rings
from keytool.library.model import Couplet, Key, Lead

SLUGS = [f"c{number}" for number in range(8)]


def couplet(id: str, targets: list[str]) -> Couplet:
    leads = {f"l{n}": Lead(f"l{n}", "Text", {}, False, to, "", "" if to else "end", None) for n, to in enumerate(targets)}
    return Couplet(id, 1, "Asks?", "Look.", None, (), leads)


@st.composite
def keys(draw: st.DrawFn) -> Key:
    ids = SLUGS[: draw(st.integers(1, len(SLUGS)))]
    targets = st.lists(st.sampled_from([*ids, "", "nowhere"]), min_size=2, max_size=3)
    return Key("key", "Key", "About.", ("group",), 40, (), (), draw(st.sampled_from(ids)), {id: couplet(id, draw(targets)) for id in ids})


def graph(key: Key) -> networkx.DiGraph:
    result = networkx.DiGraph()
    result.add_nodes_from(key.couplets)
    result.add_edges_from(
        (each.id, lead.couplet) for each in key.couplets.values() for lead in each.leads.values() if lead.couplet in key.couplets
    )
    return result


@given(keys())
def test_reached_couplets(key: Key) -> None:
    assert reached(key) == networkx.descendants(graph(key), key.first) | {key.first}


@given(keys())
def test_rings_are_found_where_there_are_any(key: Key) -> None:
    whole = graph(key)
    found = list(rings(key))
    assert bool(found) == (not networkx.is_directed_acyclic_graph(whole))
    for ring, lead in found:
        assert all(whole.has_edge(one, other) for one, other in zip(ring, [*ring[1:], ring[0]], strict=True))
        assert lead.couplet == ring[0] and lead in key.couplets[ring[-1]].leads.values()
        assert len(set(ring)) == len(ring)


@given(keys())
def test_without_the_closing_leads_no_ring_is_left(key: Key) -> None:
    whole = graph(key)
    whole.remove_edges_from([(ring[-1], ring[0]) for ring, _ in rings(key)])
    assert networkx.is_directed_acyclic_graph(whole)


@given(keys())
def test_reading_order_goes_forward_where_there_is_no_ring(key: Key) -> None:
    raw = {
        "first": key.first,
        "couplets": {
            each.id: {"leads": {lead.id: {"couplet": lead.couplet} if lead.couplet else {} for lead in each.leads.values()}}
            for each in key.couplets.values()
        },
    }
    order = reading_order(raw["first"], raw_goes(raw["couplets"]))
    assert sorted(order) == sorted(key.couplets)
    met = graph(key).subgraph(reached(key))
    if networkx.is_directed_acyclic_graph(met):
        assert order[0] == key.first
        assert all(order.index(one) < order.index(other) for one, other in met.edges)
