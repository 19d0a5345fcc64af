"""An invented pattern in centimetres: triangles, geese, a template, a border and a binding."""

WEIR = """\
pattern: Pilots at the Weir
summary: Sails and geese on a river, drawn in centimetres from the first line.
written-in: cm
width: 107
sizes:
  cot: {finished: 84 x 108, wide: 6, high: 8}
  bed: {finished: 132 x 180, wide: 10, high: 14}
fabrics:
  river: {use: grounds, tone: light, colour: "#dfe8ea"}
  slate: {use: sails, tone: dark, colour: "#3d4f5c"}
  brass: {use: geese, tone: medium, colour: "#b98f3c"}
  bank: {use: border and binding, tone: medium, colour: "#6d7f5e"}
  back: {use: backing, tone: light, colour: "#ece7dc"}
pieces:
  A: {fabric: river}
  B: {fabric: slate}
  G: {fabric: brass}
  W: {fabric: river}
  P: {fabric: slate, template: quarter circle, radius: 8}
  H: {fabric: river, template: quarter hollow, radius: 8}
  F: {fabric: bank, cut: 7.5 x WOF}
units:
  sail: {method: half-square triangles, from: A B, finished: 12 square, press: toward B}
  goose: {method: flying geese, goose: G, wings: W, finished: 12 x 6}
  flight: {rows: [goose, goose]}
  pool: {method: curved seam, pie: P, ground: H, measure: 13.5 square}
top:
  rows: [sail flight, pool sail]
  across: wide
  down: high
  before-borders: {cot: 73.5 x 97.5, bed: 121.5 x 169.5}
  borders: [{strip: F}]
backing: {fabric: back, over: 10}
batting: {over: 10}
binding: {fabric: bank, cut: 6.5 x WOF}
quilting:
  - {area: all over, design: straight lines, spacing: 5}
"""
