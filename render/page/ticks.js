// What is ticked is kept for the site, its revision and the section; when what
// there is to tick changes, ticks begin anew.
function ticksOf(section) {
  const part = byID(section.id), boxes = [...part.querySelectorAll("[data-tick]")];
  if (!boxes.length) return;
  const key = JSON.stringify(["turfplat ticks", data.site, data.revision, section.id, section.mark]);
  const clear = part.querySelector(".clear"), button = clear.querySelector("button"), note = clear.querySelector("span");
  let before = null; // what was cleared last, to be brought back

  const ticked = () => boxes.filter(b => b.checked).map(b => b.dataset.tick);
  const set = names => { for (const b of boxes) b.checked = Array.isArray(names) && names.includes(b.dataset.tick); };

  // fillsFor tells what is still to be put into the hopper for a lane.
  const fillsFor = lane => boxes.filter(b => b.dataset.fills === lane && !b.checked).map(b => ": " + b.dataset.words).join("");

  // show marks lanes on the map, and the one to walk next.
  function show() {
    const lanes = boxes.filter(b => b.dataset.lane), next = lanes.find(b => !b.checked);
    for (const b of boxes) {
      b.closest("li").classList.toggle("ticked", b.checked);
      b.closest("li").classList.toggle("onward", b === next);
      const lane = b.dataset.lane && byID(section.group + "-lane-" + b.dataset.lane);
      if (!lane) continue;
      lane.classList.toggle("ticked", b.checked);
      lane.classList.toggle("onward", b === next);
    }
    if (next && next.dataset.pass) setLayer("pass-" + next.dataset.pass, true); // is hidden at first
    const told = part.querySelector(".next");
    if (told) told.textContent = next ? "Next is lane " + next.dataset.lane + fillsFor(next.dataset.lane) + "; " + lanes.filter(b => b.checked).length + " of " + lanes.length + " walked." : "All lanes walked.";
    button.textContent = before ? "Bring ticks back" : "Clear ticks";
    button.disabled = !before && !ticked().length;
  }
  function save() {
    note.textContent = keep(key, ticked()) ? "" : "This browser keeps nothing: ticks are lost when the page is closed.";
    show();
  }
  for (const b of boxes) {
    b.autocomplete = "off";
    b.addEventListener("change", () => { before = null; save(); });
  }
  button.addEventListener("click", () => {
    const names = ticked();
    set(before || []);
    before = before ? null : names;
    save();
  });
  clear.hidden = false;
  set(kept(key));
  show();
}
data.sections.forEach(ticksOf);
