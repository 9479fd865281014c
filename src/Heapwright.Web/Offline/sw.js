// Keeps the last copy of pages for where there is no signal. The line above names the build, so that another build
// brings another shelf. Answers to what is sent are never kept.
const shelf = 'heapwright-' + build;
const most = 90;
const apart = /^\/(s\/|calendar\/|settings\/(backup|links|mail)|api|health|openapi|export|theme|format|language|outbox\/|sheets\/.+\/pdf|heaps\/.+\/(record\.(json|pdf)|heat\.pdf))/;
let filled = 0;

const put = async (cache, name, answer) => {
  await cache.put(name, answer);
  const names = await cache.keys();
  const pages = names.filter(n => !/\.\w+$/.test(new URL(n.url).pathname));
  for (const old of pages.slice(0, Math.max(0, pages.length - most))) await cache.delete(old);
};
const said = answer => answer?.headers.get('content-language');
const fill = async first => {
  if (!first && Date.now() - filled < 300000) return;
  filled = Date.now();
  const cache = await caches.open(shelf);
  const answer = await fetch('/offline.json');
  const list = await answer.clone().json();
  const other = said(await cache.match('/offline.json')) !== said(answer);
  await cache.put('/offline.json', answer.clone());
  await Promise.all([...(first ? list.shell : []), ...list.pages].map(async name => {
    const got = await fetch(name);
    if (got.ok && !got.redirected) await put(cache, name, got);
    else if (first && list.shell.includes(name)) throw new Error(name);
  }));
  // After another language was chosen, copies in the one before go, once those that were fetched anew are in.
  for (const name of other ? await cache.keys() : []) {
    const was = said(await cache.match(name, { ignoreVary: true }));
    if (was && was !== said(answer)) await cache.delete(name, { ignoreVary: true });
  }
};
self.addEventListener('install', e => { self.skipWaiting(); e.waitUntil(fill(true)); });
self.addEventListener('activate', e => e.waitUntil((async () => {
  for (const name of await caches.keys()) if (name !== shelf) await caches.delete(name);
  await self.clients.claim();
})()));

const copy = async (url, cache) => {
  const code = /^\/b\/([^/]+)$/.exec(url.pathname)?.[1];
  if (code) {
    const list = await (await cache.match('/offline.json'))?.json();
    return Response.redirect(list?.labels[code.toUpperCase()] ?? '/reading', 302);
  }
  const own = await cache.match(url.pathname + url.search, { ignoreVary: true }) ?? await cache.match(url.pathname, { ignoreSearch: true, ignoreVary: true });
  const kept = own ?? await cache.match(/^\/heaps\//.test(url.pathname) ? '/reading' : '/outbox', { ignoreVary: true });
  if (!kept) return Response.error();
  const words = (await kept.text()).replace('data-copy="no"', `data-copy="${new Date(kept.headers.get('date') ?? 0).toISOString()}${own ? '' : '|other'}"`);
  const headers = new Headers(kept.headers);
  ['content-encoding', 'content-length'].forEach(name => headers.delete(name));
  return new Response(words, { status: 200, headers });
};
const page = async (e, url) => {
  const cache = await caches.open(shelf);
  try {
    const answer = await fetch(e.request);
    if ([502, 503, 504].includes(answer.status)) throw new Error('nobody behind the proxy');
    if (answer.ok && !answer.redirected && !/[?&](done|kept|refused)=/.test(url.search)
      && answer.headers.get('content-type')?.startsWith('text/html')) {
      e.waitUntil(put(cache, url.pathname + url.search, answer.clone()));
      e.waitUntil((async () => {
        if (said(await cache.match('/offline.json')) !== said(answer)) filled = 0;
        await fill();
      })().catch(() => { filled = 0; }));
    }
    return answer;
  } catch {
    return copy(url, cache);
  }
};
const part = async request => {
  const cache = await caches.open(shelf);
  const kept = await cache.match(request, { ignoreVary: true });
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await put(cache, request, answer.clone());
  return answer;
};
self.addEventListener('fetch', e => {
  const url = new URL(e.request.url);
  if (e.request.method !== 'GET' || url.origin !== location.origin || apart.test(url.pathname)) return;
  if (e.request.mode === 'navigate' || e.request.headers.get('accept')?.includes('text/html')) e.respondWith(page(e, url));
  else if (['style', 'script', 'image', 'manifest', 'font'].includes(e.request.destination)) e.respondWith(part(e.request));
});
