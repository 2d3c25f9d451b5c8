// Before the first paint: the theme that was chosen, and that there is script at all.
const root = document.documentElement;
root.classList.add("js");
try {
  if (localStorage.theme) root.dataset.theme = localStorage.theme;
} catch {
  // a browser that keeps nothing shows the theme of the system
}
