"""Two small sources whose strips are shared: a log cabin, and letters of several widths."""

CABIN = """
    pattern: Cabin
    date: 2026-11-25
    sizes:
      mat: {finished: 12 x 12, across: 2, down: 2}
      rug: {finished: 18 x 24, across: 3, down: 4}
    fabrics:
      lamp: {use: centres, tone: medium}
      day: {use: light logs, tone: light}
      dusk: {use: dark logs, tone: dark}
      back: {use: backing, tone: light}
    pieces:
      C: {fabric: lamp, cut: 2 1/2 square}
      A: {fabric: day, cut: 1 1/2 x WOF}
      B: {fabric: dusk, cut: 1 1/2 x WOF}
    units:
      cabin:
        method: log cabin
        centre: C
        logs: (A A B B)*2
        measure: 6 1/2 square
    top:
      rows: [cabin]
      across: across
      down: down
    backing: {fabric: back}
    binding: {fabric: dusk, cut: 2 1/2 x WOF}
    """

SHELF = """
    pattern: Shelf
    date: 2026-11-25
    settings: {cutting: STYLE}
    sizes:
      mat: {finished: 12 x 21, down: 3}
      rug: {finished: 12 x 84, down: 12}
    fabrics:
      oak: {use: all of it, tone: medium}
      back: {use: backing, tone: light}
      cord: {use: binding, tone: dark}
    pieces:
      A: {fabric: oak, cut: 12 1/2 x 9 1/2}
      B: {fabric: oak, cut: 12 1/2 x 7 1/2}
      D: {fabric: oak, cut: 6 1/2 x 5 1/2}
    top:
      rows: [A, B, D D]
      down: down
    backing: {fabric: back}
    binding: {fabric: cord, cut: 2 1/2 x WOF}
    """
