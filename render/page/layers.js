// Layers of the map are switched by boxes that name the groups they are for.
function switchLayer(box) {
  for (const id of box.dataset.groups.split(" ")) {
    const group = byID(id);
    if (group) group.classList.toggle("off", !box.checked);
  }
}
for (const box of document.querySelectorAll("#layers input")) {
  box.autocomplete = "off"; // a reload shows what is drawn
  box.addEventListener("change", () => switchLayer(box));
  switchLayer(box);
}
function setLayer(id, on) {
  const box = byID("layer-" + id);
  if (!box) return;
  box.checked = on;
  switchLayer(box);
}
