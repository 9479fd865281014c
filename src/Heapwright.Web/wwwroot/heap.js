// After a step to another page the heading takes the focus, so that it is read aloud. A first visit starts at the top,
// and a step within a page leaves the focus where the hand is.
let path = location.pathname;
Blazor.addEventListener('enhancedload', () => {
  if (location.pathname !== path) {
    path = location.pathname;
    document.querySelector('h1')?.focus({ preventScroll: true });
  }
});

// The days of a heap: every picture lies in the page already, and the slider brings one forward. Without script the form
// asks for it.
const heap = () => ({ slide: document.querySelector('[data-days]'), svg: document.querySelector('[data-heat]') });
let run = 0;
const still = () => {
  clearInterval(run);
  run = 0;
  const play = document.querySelector('[data-play]');
  if (play?.dataset.go) play.textContent = play.dataset.go;
};
const showDay = day => {
  const { slide, svg } = heap();
  if (!slide || !svg) return false;
  const at = Math.min(slide.max, Math.max(slide.min, day));
  slide.value = at;
  for (const frame of svg.querySelectorAll('[data-day]')) {
    if (+frame.dataset.day === at) {
      frame.removeAttribute('display');
      svg.setAttribute('aria-label', frame.dataset.words);
      slide.setAttribute('aria-valuetext', frame.dataset.words);
      document.querySelector('[data-words-here]').textContent = frame.dataset.words;
    } else frame.setAttribute('display', 'none');
  }
  for (const line of document.querySelectorAll('[data-cursor]')) {
    const x = +line.dataset.x0 + at * line.dataset.dx;
    line.setAttribute('x1', x);
    line.setAttribute('x2', x);
  }
  const kept = document.querySelector('[data-day-here]');
  if (kept) kept.value = at;
  return at;
};
const keepDay = () => {
  const url = new URL(location.href);
  url.searchParams.set('day', heap().slide.value);
  history.replaceState(history.state, '', url);
};
const ready = () => {
  still();
  const { slide } = heap();
  if (!slide) return;
  document.querySelectorAll('[data-only-plain]').forEach(e => { e.hidden = true; });
  document.querySelectorAll('[data-play]').forEach(e => { e.hidden = false; });
};
document.addEventListener('input', e => { if (e.target.matches?.('[data-days]')) { still(); showDay(+e.target.value); } });
document.addEventListener('change', e => { if (e.target.matches?.('[data-days]')) keepDay(); });
document.addEventListener('click', e => {
  const step = e.target.closest?.('[data-step]');
  if (step && heap().slide) {
    e.preventDefault();
    e.stopPropagation();
    still();
    showDay(+heap().slide.value + +step.dataset.step);
    keepDay();
    return;
  }
  const play = e.target.closest?.('[data-play]');
  if (!play) return;
  if (run) { still(); keepDay(); return; }
  const { slide } = heap();
  play.dataset.go = play.textContent;
  play.textContent = play.dataset.stop;
  if (slide.value === slide.max) showDay(0);
  run = setInterval(() => {
    if (!heap().slide || showDay(+heap().slide.value + 1) >= +slide.max) { still(); keepDay(); }
  }, 350);
}, true);
Blazor.addEventListener('enhancedload', ready);
ready();
