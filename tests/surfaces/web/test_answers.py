"""What was judged once is not judged again, and what is kept stays few."""

from lightoff.surfaces.web.desk import Answers, Judged


def test_only_the_latest_answers_are_kept() -> None:
    answers = Answers(most=2)
    judged = [Judged(None, None) for _ in range(3)]
    answers.keep(("a", 1, 1), judged[0])
    answers.keep(("b", 1, 1), judged[1])
    assert answers.find(("a", 1, 1)) is judged[0]
    answers.keep(("c", 1, 1), judged[2])
    assert answers.find(("b", 1, 1)) is None
    assert answers.find(("a", 1, 1)) is judged[0]


def test_a_page_looked_at_twice_is_judged_once_and_anew_after_a_write(bench) -> None:
    address = bench.reopened("one-furnace-propane")
    stream = bench.streams["one-furnace-propane"]
    desk = bench.browser.app.state.desk
    bench.browser.get(address)
    first = desk.bench(stream, 1)
    bench.browser.get(address)
    assert desk.bench(stream, 1) is first
    sent = {"point": "gas.supply", "run": "off", "value": "12"}
    bench.browser.post(f"{address}/readings", sent)
    assert desk.bench(stream, 1) is not first
