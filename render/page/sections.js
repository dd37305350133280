// One section is shown at a time, with its own map.
const choice = byID("section");
let shown = null;

function showSection(id) {
  shown = data.sections.find(s => s.id === id) || data.sections[0];
  choice.value = shown.id;
  for (const section of data.sections) {
    byID(section.id).classList.toggle("shown", section === shown);
    for (const half of ["-under", "-over"]) {
      const group = byID(section.group + half);
      if (group) group.classList.toggle("shown", section === shown);
    }
  }
  setLayer("sun", Boolean(shown.sun));
  tell();
}
choice.addEventListener("change", () => {
  showSection(choice.value);
  try { history.replaceState(null, "", "#" + encodeURIComponent(choice.value)); } catch { /* a page that is no file has no address */ }
});
function sectionAsked() {
  try { return decodeURIComponent(location.hash.slice(1)); } catch { return ""; }
}
addEventListener("hashchange", () => { if (data.sections.some(s => s.id === sectionAsked())) showSection(sectionAsked()); });
choice.autocomplete = "off";
byID("choice").hidden = false;
showSection(sectionAsked());
