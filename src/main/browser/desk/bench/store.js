// Keeps recordings and their marks in this browser, one for each lesson. Nothing is sent anywhere.
const NAME = "listening-bench";
const STORE = "recordings";

function asked(request) {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}

async function store(mode) {
  const opening = indexedDB.open(NAME, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
  const database = await asked(opening);
  return database.transaction(STORE, mode).objectStore(STORE);
}

/** What is kept under a lesson's address: `{name, file, marks, first}`, or undefined. */
export async function kept(key) {
  return asked((await store("readonly")).get(key));
}

export async function keep(key, recording) {
  await asked((await store("readwrite")).put(recording, key));
}

export async function forget(key) {
  await asked((await store("readwrite")).delete(key));
}
