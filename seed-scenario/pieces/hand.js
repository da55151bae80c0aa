// A child's hand: writes each <text class="pen"> as strokes of a pencil, so that a picture hangs on no font of a machine.
// `data-wobble` says how uneven it is (0 steady, 1 a beginner's), `data-slant` by how many degrees it leans.
// A letter is its width and its path: baseline at 0, small letters 10 high, tall ones 18.
const letters = {
  a: [10, "M8-9C4-12 0-8 1-4C2 1 7 0 8-5M8-10V-2C8 0 9 0 10-1"], b: [10, "M1-19V0M1-6C2-11 9-12 9-5C9 1 3 1 1-3"],
  c: [9, "M8-8C5-12 0-9 1-4C2 1 6 1 8-2"], d: [10, "M8-9C4-12 0-8 1-4C2 1 7 0 8-5M8-19V0"], e: [9, "M1-5H8C8-12 1-12 1-5C1 1 6 1 8-2"],
  f: [7, "M8-17C6-20 3-19 3-15V0M0-10H7"], g: [10, "M8-9C4-12 0-8 1-4C2 1 7 0 8-5M8-10V3C8 8 3 8 1 5"], h: [10, "M1-19V0M1-6C3-11 8-12 8-6V0"],
  i: [4, "M2-10V0M2-15V-14.5"], j: [6, "M4-10V3C4 7 1 8-1 5M4-15V-14.5"], k: [9, "M1-19V0M8-10L1-4L8 0"], l: [5, "M2-19V-2C2 0 3 0 4-1"],
  m: [13, "M1-10V0M1-6C2-11 6-11 6-6V0M6-6C7-11 11-11 11-6V0"], n: [10, "M1-10V0M1-6C3-11 8-12 8-6V0"], o: [10, "M5-10C-1-10 0 0 5 0C10 0 10-10 5-10"],
  p: [10, "M1-10V8M1-6C2-11 9-12 9-5C9 1 3 1 1-3"], q: [10, "M8-9C4-12 0-8 1-4C2 1 7 0 8-5M8-10V8"], r: [8, "M1-10V0M1-6C2-9 4-11 7-9"],
  s: [8, "M7-9C5-11 1-10 1-7.5C1-5 7-5.5 7-2.5C7 1 2 .5 1-1"], t: [8, "M3-16V-2C3 0 5 1 7-1M0-10H6"], u: [10, "M1-10V-4C1 1 7 1 8-4M8-10V0"],
  v: [9, "M1-10L4.5 0L8-10"], w: [13, "M1-10L4 0L6.5-8L9 0L12-10"], x: [9, "M1-10L8 0M8-10L1 0"], y: [9, "M1-10L5-1M9-10L4 3C3 6 2 7 0 7"], z: [9, "M1-10H8L1 0H8"],
  A: [12, "M1 0L6-18L11 0M3-6H9"], B: [10, "M1-18V0M1-18C10-19 9-10 1-10C11-10 10 1 1 0"], C: [12, "M10-15C6-20 0-17 1-8C2 2 8 1 11-3"],
  D: [12, "M1-18V0M1-18C13-18 13 0 1 0"], E: [10, "M9-18H1V0H9M1-9H7"], F: [10, "M9-18H1V0M1-9H7"], G: [12, "M10-15C6-20 0-17 1-8C2 2 10 2 10-7H6"],
  H: [12, "M1-18V0M10-18V0M1-9H10"], I: [7, "M3-18V0M0-18H6M0 0H6"], J: [9, "M8-18V-4C8 1 2 1 1-3"], K: [11, "M1-18V0M10-18L1-8L10 0"], L: [9, "M1-18V0H8"],
  M: [14, "M1 0V-18L7-6L13-18V0"], N: [12, "M1 0V-18L10 0V-18"], O: [14, "M7-18C-1-18-1 0 7 0C15 0 15-18 7-18"], P: [10, "M1 0V-18C11-19 11-8 1-8"],
  R: [11, "M1 0V-18C11-19 11-9 1-9L10 0"], S: [11, "M9-16C6-20 1-18 1-14C1-9 10-10 10-4C10 1 3 1 0-3"], T: [12, "M0-18H12M6-18V0"], U: [12, "M1-18V-6C1 2 10 2 10-6V-18"],
  W: [18, "M1-18L5 0L9-14L13 0L17-18"], Y: [12, "M1-18L6-9M11-18L6-9V0"],
  0: [11, "M5-18C-1-18 0 0 5 0C10 0 11-18 5-18"], 1: [7, "M1-14L5-18V0"], 2: [11, "M1-14C1-20 9-19 9-14C9-9 3-5 1 0H10"], 3: [10, "M1-17C9-20 10-10 4-10C11-10 10 2 1-1"],
  4: [11, "M7 0V-18L0-6H10"], 5: [10, "M9-18H2L1-11C9-13 11 1 1-1"], 6: [10, "M8-17C2-16 0-6 2-2C4 2 9 0 9-4C9-9 3-9 1-4"], 7: [10, "M1-18H9L4 0"],
  8: [10, "M5-10C-1-12 1-18 5-18C9-18 11-12 5-10C-2-8 0 0 5 0C10 0 12-8 5-10"], 9: [10, "M8-12C7-8 1-8 1-13C1-19 9-19 9-13C9-6 7-2 5 0"],
  ".": [5, "M2-.6V0"], ",": [5, "M3-1L1 3"], ":": [5, "M2-8V-7.5M2-.6V0"], "'": [4, "M2-19L1-14"], "?": [9, "M1-15C1-20 8-19 8-14C8-10 4-10 4-5M4-.6V0"], "-": [9, "M1-6H8"],
  "×": [11, "M2-10L9-3M9-10L2-3"], "+": [11, "M1-6H9M5-10V-2"], "=": [11, "M1-9H9M1-4H9"], "°": [6, "M3-18C0-18 0-13 3-13C6-13 6-18 3-18"], " ": [8, ""],
};

let state = 7;
// The same unevenness each time: between -1 and 1, always in the same order.
const uneven = () => (state = (state * 16807) % 2147483647) / 1073741823.5 - 1;

for (const text of document.querySelectorAll("text.pen")) {
  const [x, y, size] = ["x", "y", "font-size"].map(name => Number(text.getAttribute(name)));
  const [scale, wobble, slant] = [size / 26, Number(text.dataset.wobble ?? 0.3), Number(text.dataset.slant ?? 3)];
  const stroke = Number(text.getAttribute("stroke-width") ?? 3);
  const line = document.createElementNS("http://www.w3.org/2000/svg", "g");
  for (const [name, value] of Object.entries({ fill: "none", stroke: text.getAttribute("fill"), "stroke-linecap": "round", "stroke-linejoin": "round" }))
    line.setAttribute(name, value);
  let at = x;
  for (const sign of text.textContent) {
    const [width, path] = letters[sign];
    const grown = scale * (1 + uneven() * wobble * 0.22);
    const letter = document.createElementNS("http://www.w3.org/2000/svg", "path");
    letter.setAttribute("d", path);
    letter.setAttribute("stroke-width", stroke / grown);
    letter.setAttribute("transform", `translate(${at} ${y + uneven() * wobble * size * 0.12}) rotate(${uneven() * wobble * 9}) scale(${grown}) skewX(${-slant})`);
    line.append(letter);
    at += (width + 3) * grown + uneven() * wobble * size * 0.06;
  }

  text.replaceWith(line);
}
