"use strict";
// The page works without this; with it, it shows a section at a time.
const byID = id => document.getElementById(id);
const data = JSON.parse(byID("data").textContent);
document.documentElement.classList.add("js");

// element makes an element with text in it, which is never read as markup.
function element(name, text) {
  const made = document.createElement(name);
  made.textContent = text || "";
  made.dir = "auto";
  return made;
}

// What is kept stays on the device. A browser may refuse to keep anything.
function kept(key) {
  try { return JSON.parse(localStorage.getItem(key)); } catch { return null; }
}
function keep(key, value) {
  try { localStorage.setItem(key, JSON.stringify(value)); return true; } catch { return false; }
}

const lookButton = byID("look"), darkDevice = matchMedia("(prefers-color-scheme: dark)");
function isDark() { return (document.documentElement.dataset.look || (darkDevice.matches ? "dark" : "light")) === "dark"; }
function nameLook() { lookButton.textContent = isDark() ? "Light" : "Dark"; }
function setLook(look) {
  if (look === "dark" || look === "light") document.documentElement.dataset.look = look;
  nameLook();
}
setLook(kept("turfplat look"));
darkDevice.addEventListener("change", nameLook);
lookButton.addEventListener("click", () => {
  const look = isDark() ? "light" : "dark";
  setLook(look);
  keep("turfplat look", look);
});
lookButton.hidden = false;
