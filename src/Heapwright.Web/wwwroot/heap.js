// After a step to another page the heading takes the focus, so that it is read aloud. A first visit starts at the top,
// and a step within a page leaves the focus where the hand is.
let path = location.pathname;
Blazor.addEventListener('enhancedload', () => {
  if (location.pathname !== path) {
    path = location.pathname;
    document.querySelector('h1')?.focus({ preventScroll: true });
  }
});
