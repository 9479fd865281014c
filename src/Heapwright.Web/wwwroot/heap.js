// An answer on the same page leaves the eye and the hand where they were, and what it says is read aloud.
const find = what => document.querySelector(what);
const each = what => [...document.querySelectorAll(what)];
const mark = e => e && [e.id, e.name, e.type === 'radio' ? e.value : e.ariaLabel || e.textContent, e.form?.querySelector('[name=_handler]')?.value].join();
try {
  const [path, y, hand, open] = JSON.parse(sessionStorage.place ?? '[]');
  if (path === location.pathname && !location.hash) {
    each('main summary').forEach(s => { s.parentNode.open ||= open.includes(s.textContent); });
    scrollTo(0, y);
    if (hand) each('main :is(a, button, input, select, summary, textarea)').find(e => mark(e) === hand)?.focus({ preventScroll: true });
    const told = find('main [role=alert]:not([hidden]), main .notice')?.textContent;
    if (told) setTimeout(() => { find('[data-aloud]').textContent = told; }, 300);
  }
  addEventListener('pagehide', () => {
    sessionStorage.place = JSON.stringify([location.pathname, scrollY, mark(find('main :focus-visible')), each('main [open] > summary').map(s => s.textContent)]);
  });
} catch { /* A browser that keeps nothing starts at the top. */ }

// The days of a heap: every picture lies in the page already, and the slider brings one forward. Without script the form
// asks for it.
const heap = () => ({ slide: find('[data-days]'), svg: find('[data-heat]') });
let run = 0;
const still = () => {
  clearInterval(run);
  run = 0;
  const play = find('[data-play]');
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
      find('[data-words-here]').textContent = frame.dataset.words;
    } else frame.setAttribute('display', 'none');
  }
  for (const line of each('[data-cursor]')) {
    const x = +line.dataset.x0 + at * line.dataset.dx;
    line.setAttribute('x1', x);
    line.setAttribute('x2', x);
  }
  const kept = find('[data-day-here]');
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
  each('[data-only-plain]').forEach(e => { e.hidden = true; });
  each('[data-play]').forEach(e => { e.hidden = false; });
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
ready();

// The outbox: what is saved beside the heap lies in this browser's own store until the site has answered that it is kept.
// Nothing else takes it out but a person. See docs/decisions/0024-outbox.md.
const lines = (mode, work) => new Promise((good, bad) => {
  const open = indexedDB.open('heapwright', 1);
  open.onupgradeneeded = () => open.result.createObjectStore('outbox', { keyPath: 'id' });
  open.onerror = () => bad(open.error);
  open.onsuccess = () => {
    const act = open.result.transaction('outbox', mode, { durability: 'strict' });
    const ask = work(act.objectStore('outbox'));
    act.oncomplete = () => { open.result.close(); good(ask.result); };
    act.onabort = () => { open.result.close(); bad(act.error); };
  };
});
const put = item => lines('readwrite', s => s.put(item));
const drop = id => lines('readwrite', s => s.delete(id));
const all = async () => (await lines('readonly', s => s.getAll())).sort((a, b) => a.made - b.made);
const newId = () => crypto.randomUUID?.() ?? '10000000-1000-4000-8000-100000000000'.replace(/[018]/g, d =>
  (d ^ (crypto.getRandomValues(new Uint8Array(1))[0] & (15 >> (d / 4)))).toString(16));
const spoken = [...navigator.languages, document.documentElement.lang].filter(l => l.startsWith(document.documentElement.lang));
const clock = at => new Date(at).toLocaleString(spoken, { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
const fill = (text, ...values) => text.replace(/\{(\d)\}/g, (_, n) => values[n]);
let barred = '';

// Drawn anew, a photo is small and tells no place; the site draws it once more.
const shrink = async file => {
  if (!file?.size) return null;
  try {
    const photo = await createImageBitmap(file);
    const part = Math.min(1, 1600 / Math.max(photo.width, photo.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(photo.width * part);
    canvas.height = Math.round(photo.height * part);
    canvas.getContext('2d').drawImage(photo, 0, 0, canvas.width, canvas.height);
    return await new Promise(done => canvas.toBlob(done, 'image/jpeg', .85)) ?? file;
  } catch { return file; }
};

// True: the next one may go. Only an answer of this site that names the entry counts; a hotel's log-in page does not.
const send = async item => {
  const body = new FormData();
  for (const [name, value] of item.fields) body.append(name, value);
  for (const name of ['id', 'made', 'seen']) body.append(name, item[name] ?? '');
  if (item.photo) body.append('photo', item.photo, 'photo.jpg');
  body.append('sent', Date.now());
  let answer, said;
  try {
    answer = await fetch('/outbox/' + item.heap, { method: 'POST', body, headers: { 'X-Outbox': '1' }, redirect: 'error', signal: AbortSignal.timeout?.(60000) });
    said = await answer.json();
  } catch { return false; }
  if (answer.ok && said.id === item.id) {
    localStorage.seen = said.at;
    await drop(item.id);
    return true;
  }
  if ([400, 404, 413, 415, 422].includes(answer.status) && said.error) {
    await put({ ...item, why: said.error });
    return true;
  }
  barred = said.error ?? '';
  return false;
};
let flushing = false;
const flush = async () => {
  if (flushing) return;
  flushing = true;
  const work = async () => {
    barred = '';
    const tried = new Set();
    for (let item; (item = (await all()).find(i => !i.why && !tried.has(i.id)));) {
      tried.add(item.id);
      if (!await send(item)) break;
    }
  };
  try {
    await (navigator.locks ? navigator.locks.request('outbox', { ifAvailable: true }, lock => lock && work()) : work());
  } catch { /* Tried again on the next occasion. */ } finally { flushing = false; }
  await showOutbox();
};

const showOutbox = async () => {
  const items = await all().catch(() => []);
  const bar = find('[data-outbox]');
  if (bar) {
    const words = find('[data-outbox-words]');
    const look = items.filter(i => i.why).length;
    bar.hidden = !items.length;
    const now = items.length
      ? fill(words.dataset[items.length === 1 ? 'one' : 'many'], items.length, clock(items[0].made)) + (look ? ' ' + fill(words.dataset.look, look) : '') + (barred ? ' ' + barred : '')
      : '';
    if (words.textContent !== now) words.textContent = now;
  }
  const list = find('[data-outbox-list]');
  if (!list) return;
  find('[data-outbox-none]').hidden = items.length > 0;
  list.replaceChildren(...items.map(item => {
    const row = find('[data-outbox-row]').content.cloneNode(true);
    const say = (what, text) => { row.querySelector(what).textContent = text; };
    say('strong', item.name);
    say('[data-told]', item.told);
    const since = row.querySelector('[data-since]');
    since.textContent = fill(since.dataset.words, clock(item.made));
    const why = row.querySelector('[data-why]');
    if (item.why) why.textContent = fill(why.dataset.words, item.why);
    row.querySelector('a').href = `/heaps/${item.heap}/reading#${item.id}`;
    row.querySelector('button').value = item.id;
    return row;
  }));
};

// The reading page.
const tapped = form => {
  const tens = form.querySelector('[name=tens]:checked')?.value;
  const units = form.querySelector('[name=units]:checked')?.value;
  const typed = form.elements.temperature.value.trim();
  return typed || (tens && units && tens !== 'none' ? (tens === 'below' ? '\u2212' + units : '' + (+tens + +units)) : '');
};
const readBack = form => {
  const said = find('[data-said]');
  const value = tapped(form);
  said.toggleAttribute('data-shown', !!value);
  find('[data-said-words]').textContent = value;
};
const lay = (form, fields) => {
  for (const [name, value] of fields) {
    for (const field of form.querySelectorAll(`[name="${CSS.escape(name)}"]`)) {
      if (field.type === 'radio' || field.type === 'checkbox') field.checked ||= field.value === value;
      else if ((field.value = value)) field.closest('details')?.setAttribute('open', '');
    }
  }
};
const amended = () => location.hash.length === 37 && find('[data-reading]') ? location.hash.slice(1) : '';
const amend = async () => {
  const form = find('[data-reading]');
  if (!form) return;
  const item = amended() && (await all()).find(i => i.id === amended());
  if (item) lay(form, item.fields);
  readBack(form);
};

// What was typed and not yet kept is there again after the page was left or the phone gave up, for half an hour.
const draft = form => `draft ${location.pathname} ${form.querySelector('[name=_handler]')?.value}`;
const keepDraft = e => {
  const form = e.target.closest?.('[data-draft]');
  if (form) localStorage[draft(form)] = JSON.stringify([Date.now(), [...new FormData(form)].filter(([name, value]) => value.trim && name[0] !== '_' && !['id', 'at', 'unit'].includes(name))]);
};
const takeDrafts = () => each('[data-draft]').forEach(form => {
  const [at, fields] = JSON.parse(localStorage[draft(form)] ?? '[0]');
  if (Date.now() - at < 1800000) lay(form, fields);
  else delete localStorage[draft(form)];
});
document.addEventListener('input', keepDraft);
document.addEventListener('change', keepDraft);
document.addEventListener('submit', e => { if (e.target.matches('[data-draft]') && navigator.onLine) delete localStorage[draft(e.target)]; }, true);
document.addEventListener('change', e => { const form = e.target.closest?.('[data-reading]'); if (form) readBack(form); });
document.addEventListener('input', e => { const form = e.target.closest?.('[data-reading]'); if (form) readBack(form); });
document.addEventListener('submit', async e => {
  const form = e.target.closest('[data-reading]');
  if (!form || !window.indexedDB) return;
  e.preventDefault();
  e.stopImmediatePropagation();
  const data = new FormData(form);
  const chosen = form.querySelector('[name=heap]:checked');
  const half = !data.get('temperature').trim() && (data.get('tens') ?? 'none') === 'none' !== !data.get('units');
  const told = [tapped(form) && tapped(form) + find('.degrees').textContent, ...[...form.querySelectorAll('[name=spot]:checked, [name=squeeze]:checked, [name=smell]:checked')].map(f => f.parentNode.textContent.trim())].filter(Boolean);
  const photo = data.get('photo');
  const wrong = !form.dataset.to && !chosen ? form.dataset.heapFirst
    : half ? form.dataset.both
    : !tapped(form) && !data.get('squeeze') && !data.get('smell') && !photo?.size && !amended() ? form.dataset.nothing : '';
  const place = find('[data-wrong]');
  place.hidden = !wrong;
  place.textContent = wrong;
  if (wrong) { place.scrollIntoView({ block: 'center' }); return; }
  try {
    const old = amended() && (await all()).find(i => i.id === amended());
    const item = {
      id: old?.id ?? newId(),
      heap: form.dataset.to || chosen.value,
      name: form.dataset.name || chosen.parentNode.textContent.trim(),
      told: told.join(', '),
      made: old?.made ?? Date.now(),
      seen: old?.seen ?? localStorage.seen,
      fields: [...data].filter(([name, value]) => typeof value === 'string' && !['id', 'heap'].includes(name) && name[0] !== '_'),
      photo: await shrink(photo) ?? old?.photo,
    };
    await put(item);
    navigator.storage?.persist?.();
    await flush();
    const left = (await all()).find(i => i.id === item.id);
    if (!left) { location.assign(form.dataset.after || `/heaps/${item.heap}?kept=1#ledger`); return; }
    if (left.why) { location.assign('/outbox'); return; }
    form.reset();
    if (amended()) history.replaceState(null, '', location.pathname);
    readBack(form);
    const kept = find('[data-kept]');
    kept.textContent = kept.dataset.words;
  } catch { form.submit(); }
}, true);
document.addEventListener('click', async e => {
  if (e.target.closest?.('[data-outbox-again]')) { flush(); return; }
  const away = e.target.closest?.('[data-outbox-away]');
  if (!away) return;
  const item = (await all()).find(i => i.id === away.value);
  if (!item) return;
  await drop(item.id);
  await showOutbox();
  const undo = find('[data-outbox-undo]');
  undo.hidden = false;
  undo.querySelector('button').onclick = async () => { undo.hidden = true; await put(item); showOutbox(); };
});

const arrive = () => {
  const copy = find('[data-copy]');
  if (copy && copy.dataset.copy !== 'no') {
    const [at, other] = copy.dataset.copy.split('|');
    copy.textContent = fill(other ? copy.dataset.other : copy.dataset.words, clock(at));
    copy.hidden = false;
  }
  each('[data-no-worker]').forEach(e => { e.hidden = !!navigator.serviceWorker; });
  each('[data-script]').forEach(e => { e.hidden = false; });
  const token = find('[name=token]');
  if (token && location.hash) token.value = location.hash.slice(1);
  takeDrafts();
  amend();
  showOutbox().then(flush);
};
// The page in hand comes first: copies of the others are fetched once it is there and the phone has nothing to do.
const idle = work => window.requestIdleCallback ? requestIdleCallback(work, { timeout: 3000 }) : setTimeout(work, 200);
const keepPages = () => idle(() => navigator.serviceWorker?.register('/sw.js').catch(() => { /* No connection, or not wanted: the pages work without. */ }));
if (document.readyState === 'complete') keepPages();
else addEventListener('load', keepPages);
addEventListener('online', flush);
addEventListener('visibilitychange', () => document.hidden || flush());
setInterval(flush, 30000);
addEventListener('pageshow', e => e.persisted && arrive());
setTimeout(arrive);
