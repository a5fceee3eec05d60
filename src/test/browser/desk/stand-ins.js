// What scripts ask of a page, for tests that have none.

/** An element that keeps what is put into it. */
class Thing extends EventTarget {
  children = [];
  dataset = {};
  value = "";

  append(...children) {
    this.children.push(...children);
  }

  setAttribute(name, value) {
    this[name] = value;
  }
}

class Field extends Thing {
  type = "text";
}

/** Names of a browser, with a page of nothing at all. */
export function nothing() {
  return {
    document: Object.assign(new Thing(), { body: new Thing(), createElement: () => new Thing() }),
    getSelection: () => ({ isCollapsed: true }),
    HTMLElement: Thing,
    HTMLInputElement: Field,
    HTMLSelectElement: class extends Thing {},
    HTMLTextAreaElement: class extends Thing {},
  };
}

export const thing = (own = {}) => Object.assign(new Thing(), own);

/** Has these names stand for these values while something is done; gives what it comes to. */
export async function having(values, work) {
  const before = Object.keys(values).map((name) => [name, Object.getOwnPropertyDescriptor(globalThis, name)]);
  for (const [name, value] of Object.entries(values)) {
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
  }
  try {
    return await work();
  } finally {
    for (const [name, was] of before) {
      if (was) Object.defineProperty(globalThis, name, was);
      else delete globalThis[name];
    }
  }
}

/** A key that goes down on a thing; letters by their place on the keyboard as well. */
export function keyOn(target, key, held = {}) {
  const event = new Event("keydown", { cancelable: true });
  const code = /^[a-z]$/.test(key) ? `Key${key.toUpperCase()}` : key;
  return Object.assign(event, { key, code, ...held, composedPath: () => [target] });
}
