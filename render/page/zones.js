// A zone that is chosen tells what it is, and what it gets in the section that is
// shown, or in every one if that is no step.
const told = byID("told");
let chosen = null;

function tell() {
  if (!chosen) return;
  const list = element("dl"), add = (head, text) => list.append(element("dt", head), element("dd", text));
  for (const [head, text] of chosen.facts) add(head, text);
  const steps = data.sections.filter(s => s.amounts), here = steps.filter(s => s === shown);
  for (const section of here.length ? here : steps) {
    const amounts = section.amounts[chosen.letter];
    if (amounts || here.length) add(section.title, amounts ? amounts.map(a => a.join(" ")).join("; ") || "worked" : "left alone");
  }
  told.replaceChildren(element("h3", "Zone " + chosen.letter + ", " + chosen.name), list);
}

function choose(zone) {
  chosen = zone;
  for (const z of data.zones) {
    const group = byID(z.group);
    if (!group) continue;
    group.classList.toggle("chosen", z === zone);
    group.setAttribute("aria-pressed", String(z === zone));
  }
  tell();
}

for (const zone of data.zones) {
  const group = byID(zone.group);
  if (!group) continue; // too small to be drawn
  group.setAttribute("tabindex", "0");
  group.setAttribute("role", "button");
  group.setAttribute("aria-pressed", "false");
  group.setAttribute("aria-label", "Zone " + zone.letter + ", " + zone.name);
  group.addEventListener("click", () => { if (!dragged) choose(zone); });
  group.addEventListener("focus", () => { if (group.matches(":focus-visible")) bringIn(group); });
  group.addEventListener("keydown", event => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    choose(zone);
  });
}
for (const link of document.querySelectorAll("[data-zone]")) {
  link.addEventListener("click", event => {
    const zone = data.zones.find(z => z.letter === link.dataset.zone), group = byID(zone.group);
    event.preventDefault();
    choose(zone);
    byID("ground").scrollIntoView();
    if (group) { group.focus({preventScroll: true}); bringIn(group); }
  });
}
