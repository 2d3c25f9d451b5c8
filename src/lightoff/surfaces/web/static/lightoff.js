// Little: the theme, the number pad, and what a swapped page must not lose. Every page reads and
// posts without it.
const page = document.documentElement;

function theme() {
  const choice = document.getElementById("theme");
  if (!choice) return;
  choice.value = page.dataset.theme ?? "";
  choice.addEventListener("change", () => {
    if (choice.value) page.dataset.theme = choice.value;
    else delete page.dataset.theme;
    try {
      localStorage.theme = choice.value;
    } catch {
      // chosen for this page only
    }
  });
}

function typed(text, key) {
  if (key === "back") return text.slice(0, -1);
  if (key === "sign") return /^[-−]/.test(text) ? text.slice(1) : `−${text}`;
  if (key === "." && text.includes(".")) return text;
  return text + key;
}

document.addEventListener("click", (event) => {
  const key = event.target.closest("[data-key]");
  const value = key && document.getElementById("value");
  if (!value) return;
  value.value = typed(value.value, key.dataset.key);
  value.dispatchEvent(new Event("input", { bubbles: true }));
});

document.addEventListener("change", ({ target }) => {
  const shown = document.getElementById("unit");
  if (shown && target.name === "unit") shown.textContent = target.nextElementSibling.textContent;
});

// while a form is on its way nothing older is tried beside it
let sending = false;
document.addEventListener("submit", () => {
  const preview = document.getElementById("preview");
  if (!preview) return;
  sending = true;
  htmx.trigger(preview, "htmx:abort", {}, false);
});
document.addEventListener("htmx:before:request", (event) => {
  if (sending && event.target.id === "preview") event.preventDefault();
});
document.addEventListener("htmx:error", () => {
  sending = false;
});

// a reading kept: the answer is seen, and the next one can be typed at once
function kept() {
  const told = document.getElementById("told");
  if (!told) return;
  document.getElementById("taking")?.reset();
  if (told.getBoundingClientRect().bottom < 56) told.scrollIntoView({ block: "center" });
  const value = document.getElementById("value");
  if (value && matchMedia("(hover: hover)").matches) value.focus({ preventScroll: true });
}
document.addEventListener("htmx:after:swap", (event) => {
  if (event.detail.ctx.sourceElement.tagName !== "FORM") return;
  kept();
  sending = false;
});

// a calculation's address follows what is typed, so that it can be sent to somebody
document.addEventListener("htmx:after:swap", () => {
  const link = document.getElementById("calc")?.dataset.link;
  if (link) history.replaceState(null, "", link);
});

theme();
