"use strict";
// Ticks are remembered on this device; where nothing can be stored the boxes work all the same.
(() => {
  const named = (box) => "estimator tick: " + document.title + ": " + box.dataset.key;
  for (const box of document.querySelectorAll("input[data-key]")) {
    try {
      if (localStorage.getItem(named(box)) === "yes") box.checked = true;
    } catch { return; }
    box.addEventListener("change", () => {
      try {
        if (box.checked) localStorage.setItem(named(box), "yes");
        else localStorage.removeItem(named(box));
      } catch { /* full, or forbidden: the tick stays until the page is closed */ }
    });
  }
})();
