// The map is moved and zoomed. What is seen is told by the place at its upper
// left corner, in millimetres of the drawing, and pixels to a millimetre. While
// it moves, what is drawn is only shifted; when it rests, it is drawn anew.
const map = byID("pane"), drawing = map.querySelector("svg"), bar = byID("bar");
const closest = 24; // px to a millimetre
let seen = {x: 0, y: 0, scale: 1}, drawn = seen, asked = 0, resting = 0;

function fitting() { return Math.min(map.clientWidth / data.width, map.clientHeight / data.height); }

// look sees the map from elsewhere; the middle of what is seen stays on it.
function look(x, y, scale) {
  scale = Math.min(Math.max(scale, fitting()), Math.max(closest, fitting()));
  const across = map.clientWidth / scale, down = map.clientHeight / scale;
  const within = (from, size, most) => size >= most ? (most - size) / 2 : Math.min(Math.max(from, -size / 2), most - size / 2);
  seen = {x: within(x, across, data.width), y: within(y, down, data.height), scale};
  asked = asked || requestAnimationFrame(shift);
  clearTimeout(resting);
  resting = setTimeout(draw, 150);
}

function shift() {
  asked = 0;
  const grown = seen.scale / drawn.scale;
  drawing.style.transform = `translate(${(drawn.x - seen.x) * seen.scale}px, ${(drawn.y - seen.y) * seen.scale}px) scale(${grown})`;
}

function draw() {
  if (!map.clientWidth) return;
  drawn = seen;
  drawing.setAttribute("viewBox", [seen.x, seen.y, map.clientWidth / seen.scale, map.clientHeight / seen.scale].join(" "));
  drawing.style.transform = "";
  measure();
}

// measure sets the bar to a round length.
function measure() {
  const unit = data.feet ? 0.3048 : 1, longest = 130 / seen.scale * data.metres / unit;
  const ten = 10 ** Math.floor(Math.log10(longest));
  const length = [5, 2, 1].map(n => n * ten).find(n => n <= longest);
  bar.firstChild.style.width = length * unit / data.metres * seen.scale + "px";
  bar.firstChild.textContent = length + (data.feet ? " ft" : " m");
}

// zoom keeps the place under a point of the map, in pixels, where it is.
function zoom(by, px = map.clientWidth / 2, py = map.clientHeight / 2) {
  const scale = Math.min(Math.max(seen.scale * by, fitting()), Math.max(closest, fitting()));
  look(seen.x + px / seen.scale - px / scale, seen.y + py / seen.scale - py / scale, scale);
}
function pan(px, py) { look(seen.x - px / seen.scale, seen.y - py / seen.scale, seen.scale); }
function seeAll() { look(0, 0, fitting()); }

// show brings a part of the drawing into view if it is not.
function bringIn(part) {
  const box = part.getBoundingClientRect(), frame = map.getBoundingClientRect();
  const middle = {x: (box.left + box.right) / 2 - frame.left, y: (box.top + box.bottom) / 2 - frame.top};
  if (middle.x < 0 || middle.y < 0 || middle.x > frame.width || middle.y > frame.height) pan(frame.width / 2 - middle.x, frame.height / 2 - middle.y);
}

const fingers = new Map();
let dragged = false; // what follows is no tap
map.addEventListener("pointerdown", event => {
  if (event.button > 0) return;
  if (fingers.size === 0) dragged = false;
  fingers.set(event.pointerId, {x: event.clientX, y: event.clientY, from: {x: event.clientX, y: event.clientY}});
});
addEventListener("pointermove", event => {
  const finger = fingers.get(event.pointerId);
  if (!finger) return;
  const before = [...fingers.values()].map(f => ({x: f.x, y: f.y}));
  finger.x = event.clientX;
  finger.y = event.clientY;
  const far = Math.hypot(finger.x - finger.from.x, finger.y - finger.from.y) > 8;
  dragged = dragged || far || fingers.size > 1;
  if (!dragged) return;
  const after = [...fingers.values()], frame = map.getBoundingClientRect();
  const middle = points => ({x: points.reduce((sum, p) => sum + p.x, 0) / points.length, y: points.reduce((sum, p) => sum + p.y, 0) / points.length});
  const from = middle(before), to = middle(after);
  pan(to.x - from.x, to.y - from.y);
  if (after.length === 2) {
    const apart = ([p, q]) => Math.max(Math.hypot(p.x - q.x, p.y - q.y), 1);
    zoom(apart(after) / apart(before), to.x - frame.left, to.y - frame.top);
  }
});
for (const end of ["pointerup", "pointercancel"]) addEventListener(end, event => fingers.delete(event.pointerId));
map.addEventListener("wheel", event => {
  if (!event.ctrlKey && !event.metaKey) return; // the page moves
  event.preventDefault();
  const frame = map.getBoundingClientRect();
  zoom(Math.exp(-event.deltaY / 200), event.clientX - frame.left, event.clientY - frame.top);
}, {passive: false});

const step = 80; // px
const keys = {
  ArrowLeft: () => pan(step, 0), ArrowRight: () => pan(-step, 0), ArrowUp: () => pan(0, step), ArrowDown: () => pan(0, -step),
  "+": () => zoom(1.5), "=": () => zoom(1.5), "-": () => zoom(1 / 1.5), "0": seeAll,
};
map.addEventListener("keydown", event => {
  if (!keys[event.key] || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  keys[event.key]();
});
byID("nearer").addEventListener("click", () => zoom(1.5));
byID("farther").addEventListener("click", () => zoom(1 / 1.5));
byID("whole").addEventListener("click", seeAll);

// On paper the whole site is drawn, and nothing moves.
addEventListener("beforeprint", () => drawing.setAttribute("viewBox", `0 0 ${data.width} ${data.height}`));
addEventListener("afterprint", draw);

map.tabIndex = 0;
map.setAttribute("role", "group");
map.setAttribute("aria-label", "Map");
drawing.setAttribute("role", "group"); // no longer a picture: it has parts to choose
byID("tools").hidden = bar.hidden = false;
// A frame of another size shows all again if it did, else the same middle.
let size = {width: map.clientWidth, height: map.clientHeight, fit: fitting()};
new ResizeObserver(() => {
  const all = seen.scale <= size.fit * 1.001, x = seen.x + size.width / 2 / seen.scale, y = seen.y + size.height / 2 / seen.scale;
  size = {width: map.clientWidth, height: map.clientHeight, fit: fitting()};
  if (all) seeAll();
  else look(x - size.width / 2 / seen.scale, y - size.height / 2 / seen.scale, seen.scale);
  draw();
}).observe(map);
seeAll();
draw();
