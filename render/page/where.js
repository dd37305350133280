// Where am I: the device is asked only when a person asks, and what it tells
// stays on the page.
const hereButton = byID("here"), fix = byID("fix");
let watch = null, dot = null;

// onMap is where a place stands on the drawing.
function onMap(longitude, latitude) {
  const c = data.corners, from = longitude - c.west + 180;
  const u = (from - 360 * Math.floor(from / 360) - 180) / (c.east - c.west), w = (latitude - c.south) / (c.north - c.south);
  const between = i => (1 - w) * ((1 - u) * c.at[0][i] + u * c.at[1][i]) + w * ((1 - u) * c.at[2][i] + u * c.at[3][i]);
  return {x: between(0), y: between(1)};
}

function showFix({coords}) {
  if (watch === null) return;
  const at = onMap(coords.longitude, coords.latitude), away = Math.hypot(Math.max(-at.x, at.x - data.width, 0), Math.max(-at.y, at.y - data.height, 0)) * data.metres;
  const length = metres => data.feet ? Math.round(metres / 0.3048) + " ft" : Math.round(metres) + " m";
  fix.textContent = away > 0 ? "You are " + length(away) + " off the map." : "You are at the blue dot, within " + length(coords.accuracy) + " or so.";
  dot.style.display = away > 0 ? "none" : "";
  const [ring, point] = dot.children;
  for (const circle of [ring, point]) {
    circle.setAttribute("cx", at.x);
    circle.setAttribute("cy", at.y);
  }
  ring.setAttribute("r", coords.accuracy / data.metres);
  point.setAttribute("r", 1.4);
}

function stopFix(text) {
  if (watch !== null) navigator.geolocation.clearWatch(watch);
  watch = null;
  if (dot) dot.remove();
  dot = null;
  fix.textContent = text;
  hereButton.setAttribute("aria-pressed", "false");
}

function startFix() {
  const circle = look => {
    const made = document.createElementNS("http://www.w3.org/2000/svg", "circle");
    for (const name in look) made.setAttribute(name, look[name]);
    return made;
  };
  dot = document.createElementNS("http://www.w3.org/2000/svg", "g");
  dot.id = "here-dot";
  dot.style.display = "none";
  dot.append(circle({fill: "#0072b2", "fill-opacity": 0.18, stroke: "#0072b2", "stroke-width": 0.4}), circle({fill: "#0072b2", stroke: "#fff", "stroke-width": 0.5}));
  drawing.append(dot);
  hereButton.setAttribute("aria-pressed", "true");
  fix.textContent = "Waiting for a fix.";
  watch = navigator.geolocation.watchPosition(showFix, error => stopFix(error.code === 1 ? "This browser does not tell where you are." : "There is no fix here."), {enableHighAccuracy: true});
}

if (window.isSecureContext && navigator.geolocation) {
  hereButton.hidden = false;
  hereButton.addEventListener("click", () => { if (watch === null) startFix(); else stopFix(""); });
}
