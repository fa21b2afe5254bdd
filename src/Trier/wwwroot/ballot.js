// The phone ballot: keeps what is typed, sends it once the network is there, moves codes between places.
// Every page works without it. Nothing here needs a secure context: guests come over plain http.

const FIRST_WAIT = 1000;
const LONGEST_WAIT = 30000;
const UNSENT = 'trier-send:';
const store = {
  get(key) { try { return JSON.parse(localStorage.getItem(key)); } catch { return null; } },
  set(key, value) { try { localStorage.setItem(key, JSON.stringify(value)); return true; } catch { return false; } },
  drop(key) { try { localStorage.removeItem(key); } catch { /* nothing was kept, nothing to drop */ } },
  keys(prefix) { try { return Object.keys(localStorage).filter((key) => key.startsWith(prefix)); } catch { return []; } },
};
const draftKey = (form) => 'trier-draft:' + form.dataset.draft;
const sendKey = (id) => UNSENT + id;

// ---- waiting: longer after each failure, at once when the network is back ----

function pause(attempt) {
  return new Promise((done) => {
    const end = () => { clearTimeout(timer); removeEventListener('online', end); done(); };
    const timer = setTimeout(end, Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** attempt));
    addEventListener('online', end);
  });
}

async function post(url, body, header) {
  try {
    const answer = await fetch(url, {
      method: 'POST', body, credentials: 'same-origin', headers: { 'Content-Type': 'application/x-www-form-urlencoded;charset=UTF-8', ...header },
    });
    const later = answer.status >= 500 || answer.status === 429 || answer.status === 408;
    return later ? null : answer;
  } catch {
    return null;
  }
}

// ---- what the page says about it ----

function tell(form, state) {
  const place = form.querySelector('[data-draft-state]') ?? document.querySelector('[data-draft-state]');
  if (!place) return;
  place.dataset.state = state;
  const words = place.dataset[state];
  if (words !== undefined && place.textContent !== words) place.textContent = words;
}

// ---- drafts ----

const drafts = new WeakMap();

function keptValues(form) {
  const values = [];
  for (const control of form.elements) {
    const skip = !control.name || ['submit', 'button', 'reset', 'file', 'password', 'fieldset'].includes(control.type);
    if (skip || (control.type === 'hidden' && !control.closest('[data-places]'))) continue;
    if (control.type === 'radio' || control.type === 'checkbox') {
      values.push([control.name, control.value, control.checked]);
    } else if (!control.disabled) {
      values.push([control.name, control.value]);
    }
  }
  return values;
}

function restore(form) {
  const kept = store.get(draftKey(form));
  if (!kept || (kept.safe && form.dataset.draftUrl)) return;
  const texts = new Map();
  for (const [name, value, checked] of kept.values) {
    if (checked === undefined) {
      texts.set(name, [...(texts.get(name) ?? []), value]);
      continue;
    }
    for (const control of form.elements) {
      if (control.name === name && control.value === value && 'checked' in control) control.checked = checked;
    }
  }
  for (const control of form.elements) {
    if (['hidden', 'radio', 'checkbox'].includes(control.type)) continue;
    const value = texts.get(control.name)?.shift();
    if (value !== undefined) control.value = value;
  }
  const list = form.querySelector('ol[data-places]');
  if (list) placesFrom(list, texts.get('order') ?? orderOf(list), new Set(texts.get('tied') ?? []));
  tell(form, 'kept');
  if (form.dataset.draftUrl) hand(form);
}

function changed(form) {
  if (!form.dataset.draft) return;
  const draft = drafts.get(form) ?? { version: 0, busy: false, timer: 0 };
  drafts.set(form, draft);
  draft.version++;
  const kept = store.set(draftKey(form), { values: keptValues(form), safe: false });
  if (!form.dataset.draftUrl) {
    if (kept) tell(form, 'kept');
    return;
  }
  tell(form, 'sending');
  clearTimeout(draft.timer);
  draft.timer = setTimeout(() => hand(form), 600);
  clearTimeout(draft.patience);
  draft.patience = setTimeout(() => { if (kept) tell(form, 'kept'); }, 2000);
}

async function hand(form) {
  const draft = drafts.get(form) ?? { version: 0, busy: false };
  drafts.set(form, draft);
  if (draft.busy || draft.over) return;
  draft.busy = true;
  for (let attempt = 0; !draft.over; attempt++) {
    const version = draft.version;
    const answer = await post(form.dataset.draftUrl, bodyOf(form), { 'X-Trier-Draft': '1' });
    if (draft.over) break;
    if (answer && draft.version !== version) { attempt = -1; continue; }
    if (answer) {
      clearTimeout(draft.patience);
      if (answer.ok) {
        store.set(draftKey(form), { values: keptValues(form), safe: true });
        tell(form, 'safe');
      } else {
        tell(form, 'kept');
      }
      break;
    }
    clearTimeout(draft.patience);
    tell(form, 'away');
    await pause(attempt);
  }
  draft.busy = false;
}

function endDraft(form) {
  const draft = drafts.get(form);
  if (draft) {
    draft.over = true;
    clearTimeout(draft.timer);
    clearTimeout(draft.patience);
  }
  if (form.dataset.draft) store.drop(draftKey(form));
}

function bodyOf(form, submitter) {
  const data = new FormData(form);
  if (submitter?.name) data.append(submitter.name, submitter.value);
  return new URLSearchParams(data).toString();
}

// ---- sends: one at a time, in order, each with its own id until the host has answered ----

let line = Promise.resolve();

const idField = (form) => form.elements.namedItem('sendId');

// crypto.randomUUID is missing on plain http.
function newId() {
  const b = crypto.getRandomValues(new Uint8Array(16));
  b[6] = (b[6] & 15) | 64;
  b[8] = (b[8] & 63) | 128;
  return Array.from(b, (x) => x.toString(16).padStart(2, '0')).join('').replace(/(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}

function send(form, submitter) {
  const id = idField(form).value;
  const url = submitter?.hasAttribute('formaction') ? submitter.formAction : form.action;
  const job = { url, body: bodyOf(form, submitter), draft: form.dataset.draft, at: Date.now() };
  const said = job.body.replace(id, '');
  if (form.dataset.sending === said) return;
  form.dataset.sending = said;
  store.set(sendKey(id), job);
  // The next press is another send.
  idField(form).value = newId();
  line = line.then(async () => {
    const answer = await deliver(id, job, form);
    if (form.dataset.sending !== said) return;
    delete form.dataset.sending;
    if (answer.redirected) go(form, answer);
    else await show(answer);
  });
}

function go(form, answer) {
  endDraft(form);
  location.assign(answer.url);
}

async function deliver(id, job, form) {
  for (let attempt = 0; ; attempt++) {
    const answer = await post(job.url, job.body, { 'X-Trier-Send': '1' });
    if (answer) {
      store.drop(sendKey(id));
      return answer;
    }
    if (form) tell(form, 'away');
    await pause(attempt);
  }
}

// A page closed before the host answered leaves its send behind; it goes out before anything newer.
async function sendWhatIsLeft() {
  const left = store.keys(UNSENT).map((key) => [key.slice(UNSENT.length), store.get(key)]).filter(([, job]) => job && sameHost(job.url));
  let last, typing;
  for (const [id, job] of left.sort(([, a], [, b]) => a.at - b.at)) {
    const form = [...document.forms].find((candidate) => candidate.action === job.url && 'send' in candidate.dataset);
    const answer = await deliver(id, job, form);
    if (!form && job.draft) store.drop('trier-draft:' + job.draft);
    last = form && answer.redirected ? () => go(form, answer) : last;
    typing = drafts.get(form)?.version || form?.dataset.sending;
  }
  if (!typing) last?.();
}

function sameHost(url) {
  try { return new URL(url, location.href).origin === location.origin; } catch { return false; }
}

async function show(answer) {
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  document.title = page.title || document.title;
  document.body.replaceWith(document.adoptNode(page.body));
  for (const form of document.forms) prepare(form);
  const faults = document.querySelector('[role=alert]') ?? document.querySelector('h1');
  faults?.setAttribute('tabindex', '-1');
  faults?.focus();
  scrollTo(0, 0);
}

// ---- places ----

const rowsOf = (list) => [...list.querySelectorAll(':scope > [data-code]')];
const orderOf = (list) => rowsOf(list).map((row) => row.dataset.code);
const tiedOf = (row) => !row.querySelector('[name=tied]').disabled;
const plateOf = (list) => list.closest('form').querySelector('[data-plate]');

function setTied(row, tied) {
  row.querySelector('[name=tied]').disabled = !tied;
  row.querySelector('.place-same').setAttribute('aria-pressed', String(tied));
  row.classList.toggle('place-tied', tied);
}

// Brings everything in step with the order of the rows.
function settle(list) {
  const names = list.dataset.ordinals.split('|');
  const rows = rowsOf(list);
  let place = 0;
  rows.forEach((row, i) => {
    if (i === 0) setTied(row, false);
    if (!tiedOf(row)) place = i;
    row.querySelector('.place-name').textContent = names[place];
    const [same, up, down] = row.querySelectorAll('[name=move]');
    same.hidden = i === 0;
    up.disabled = i === 0;
    down.disabled = i === rows.length - 1;
  });
  const left = names.length - rows.length;
  const free = [...list.querySelectorAll('.place-free')];
  free.forEach((slot, i) => { slot.hidden = i < free.length - left; });
  const next = free.find((slot) => !slot.hidden)?.querySelector('.place-slot');
  if (next && list.dataset.slot) next.textContent = list.dataset.slot;
  const plate = plateOf(list);
  if (plate) plate.hidden = !left;
  const said = list.closest('form').querySelector('[data-left-words]');
  if (said) {
    const words = said.dataset.leftWords.split('|');
    const key = said.nextElementSibling;
    said.textContent = words[Math.min(left, words.length - 1)];
    key.classList.toggle('plug-unready', left > 0);
    key.classList.toggle('plug-primary', !left);
  }
}

function saidOf(list, row) {
  const said = list.closest('form').querySelector('[data-places-said]');
  if (said) said.textContent = list.dataset.moved.replace('{0}', row.dataset.code).replace('{1}', row.querySelector('.place-name').textContent);
}

function placed(list, code) {
  const form = list.closest('form');
  const row = form.querySelector('template[data-place-row]').content.firstElementChild.cloneNode(true);
  row.dataset.code = code;
  row.innerHTML = row.innerHTML.replaceAll('000', code);
  list.insertBefore(row, list.querySelector('.place-free'));
  plateOf(list)?.querySelector(`[data-code="${CSS.escape(code)}"]`)?.remove();
  return row;
}

function placesFrom(list, order, tied) {
  const onPlate = [...(plateOf(list)?.querySelectorAll('[data-code]') ?? [])].map((key) => key.dataset.code);
  for (const code of order.filter((c) => orderOf(list).includes(c) || onPlate.includes(c))) {
    const row = rowsOf(list).find((r) => r.dataset.code === code) ?? placed(list, code);
    list.insertBefore(row, list.querySelector('.place-free'));
    setTied(row, tied.has(code));
  }
  for (const row of rowsOf(list).filter((r) => !order.includes(r.dataset.code))) list.insertBefore(row, list.querySelector('.place-free'));
  settle(list);
}

// A code that leaves a tied group takes no one along.
function detach(row) {
  const below = row.nextElementSibling;
  if (!tiedOf(row) && below?.dataset.code && tiedOf(below)) setTied(below, false);
  setTied(row, false);
}

function move(list, deed, code) {
  const form = list.closest('form');
  let row = rowsOf(list).find((r) => r.dataset.code === code);
  if (deed === 'place' && !row) {
    row = placed(list, code);
  } else if (deed === 'same') {
    setTied(row, !tiedOf(row));
  } else if (deed === 'up' && row.previousElementSibling) {
    const above = row.previousElementSibling;
    detach(row);
    detach(above);
    list.insertBefore(row, above);
  } else if (deed === 'down' && row.nextElementSibling?.dataset.code) {
    const below = row.nextElementSibling;
    detach(below);
    detach(row);
    list.insertBefore(below, row);
  }
  settle(list);
  const keys = [...row.querySelectorAll('[name=move]:not([hidden], :disabled)')];
  const focus = deed === 'place' ? plateOf(list)?.querySelector('[data-code]') ?? keys[0] : keys.find((key) => key.value.startsWith(deed)) ?? keys[0];
  focus?.focus();
  saidOf(list, row);
  changed(form);
}

function drag(list, row, event) {
  if (event.button > 0 || !event.target.closest('.place-grip')) return;
  event.preventDefault();
  // The list holds the pointer: a row that moves would let go of it.
  list.setPointerCapture(event.pointerId);
  row.classList.add('place-lifted');
  const others = rowsOf(list).filter((other) => other !== row);
  const before = { order: orderOf(list), tied: new Set(rowsOf(list).filter(tiedOf)) };
  // Ties are reckoned from where the drag began: passing over a tied group does not part it.
  const without = new Set(before.tied);
  const below = row.nextElementSibling;
  if (!before.tied.has(row)) without.delete(below);
  const follow = (move) => {
    const next = others.find((other) => { const box = other.getBoundingClientRect(); return move.clientY < box.top + box.height / 2; })
      ?? list.querySelector('.place-free');
    if (row.nextElementSibling === next) return;
    list.insertBefore(row, next);
    const home = orderOf(list).join() === before.order.join();
    for (const other of rowsOf(list)) setTied(other, home ? before.tied.has(other) : other !== row && other !== next && without.has(other));
    settle(list);
  };
  const end = () => {
    list.removeEventListener('pointermove', follow);
    row.classList.remove('place-lifted');
    if (orderOf(list).join() === before.order.join()) return;
    saidOf(list, row);
    changed(list.closest('form'));
  };
  list.addEventListener('pointermove', follow);
  list.addEventListener('lostpointercapture', end, { once: true });
}

// ---- wiring ----

function prepare(form) {
  const list = form.querySelector('ol[data-places]');
  if (list) {
    list.classList.add('places-live');
    settle(list);
  }
  if (form.dataset.draft) restore(form);
}

for (const kind of ['input', 'change']) document.addEventListener(kind, ({ target }) => { if (target.form) changed(target.form); });
document.addEventListener('pointerdown', (event) => {
  const row = event.target.closest?.('[data-places] > [data-code]');
  if (row) drag(row.parentElement, row, event);
});
document.addEventListener('submit', (event) => {
  const form = event.target;
  const list = form.querySelector('ol[data-places]');
  const [deed, code] = event.submitter?.name === 'move' ? event.submitter.value.split(':') : [];
  if (list && code) {
    event.preventDefault();
    move(list, deed, code);
  } else if ('send' in form.dataset && idField(form)) {
    event.preventDefault();
    send(form, event.submitter);
  }
});
for (const form of document.forms) prepare(form);
sendWhatIsLeft();
