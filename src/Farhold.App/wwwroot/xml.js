// Reads XML for the app piece by piece: strict, with namespaces. A document type ends it; nothing outside the text is looked at.

const end = '\0';                      // no XML file may hold it

let library = null;
const load = () => library ??= import('./lib/saxes/saxes.js').catch(error => { library = null; throw error; });

// On the very first visit no copy serves this page yet: what is not loaded by now would be missing once the network is gone.
(globalThis.requestIdleCallback ?? setTimeout)(() => load().catch(() => { }));

let Feed = null;

/** Whether files can be read now. */
export async function ready() {
  try { Feed ??= feedOn((await load()).SaxesParser); return true; } catch { return false; }
}

export const open = () => new Feed();

/** What the next piece of the text holds; the fields are told in FedXmlNodes.cs. */
export const take = (feed, text, isLast) => feed.take(text, isLast);

const feedOn = SaxesParser => class extends SaxesParser {
  #told = '';
  #name = 0;
  #stands = -1;

  constructor() {
    super({ xmlns: true });
    this.on('xmldecl', said => { if (said.version !== '1.0') this.fail('version'); });
    this.on('doctype', () => this.fail('document type'));
    this.on('opentagstart', tag => { this.#name = this.chunkPosition + this.prevI - tag.name.length; });
    this.on('opentag', tag => this.#start(tag));
    this.on('closetag', tag => { if (!tag.isSelfClosing) this.#told += '>' + end; });
    this.on('text', text => { this.#told += '=' + end + text + end; });
    this.on('cdata', text => { this.#told += '=' + end + text + end; });
  }

  #start(tag) {
    const attributes = Object.values(tag.attributes);
    let told = '<' + end + this.#name + end + tag.local + end + tag.uri + end + (tag.isSelfClosing ? 1 : 0) + end + attributes.length + end;
    for (const attribute of attributes) told += attribute.name + end + attribute.value + end;
    this.#told += told;
  }

  // What has no end is looked for to the end of the text, and yet the file is broken where it stands.
  sEntity() {
    if (this.#stands < 0) this.#stands = this.position;
    super.sEntity();
    if (this.entity === '') this.#stands = -1;
  }

  handleTextOutsideRoot() {
    const text = this.chunk.slice(this.i).search(/[^ \t\r\n]/);
    if (text >= 0) this.#stands = this.position + text;
    super.handleTextOutsideRoot();
    this.#stands = -1;
  }

  /** A file that never began is broken from its beginning. */
  #broken(closing) {
    if (this.#stands >= 0) return this.#stands;
    if (closing) return this.sawRoot ? this.position : 0;
    return this.position - 1;
  }

  take(text, isLast) {
    this.#told = '';
    let closing = false;
    try {
      this.write(text);
      closing = true;
      if (isLast) this.close();
    } catch {
      this.#told += '!' + end + this.#broken(closing) + end;
    }
    return this.#told;
  }
};
