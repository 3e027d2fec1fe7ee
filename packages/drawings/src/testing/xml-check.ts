// A strict reader for the small part of XML that the SVGs use: it answers the tree, or throws where a parser would.

export type XmlNode = {
  readonly tag: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlNode[];
  text: string;
};

const NAME = '[A-Za-z_][A-Za-z0-9_.-]*';
const OPEN_TAG = new RegExp(`^<(${NAME})((?:\\s+${NAME}(?::${NAME})?="[^"<]*")*)\\s*(/?)>`);
const CLOSE_TAG = new RegExp(`^</(${NAME})>`);
const ATTRIBUTE = new RegExp(`(${NAME}(?::${NAME})?)="([^"<]*)"`, 'g');

export function readXml(source: string): XmlNode {
  const root: XmlNode = { tag: '', attributes: new Map(), children: [], text: '' };
  const open: XmlNode[] = [root];
  let rest = source;
  while (rest !== '') {
    const parent = open.at(-1) ?? root;
    const opened = OPEN_TAG.exec(rest);
    const closed = CLOSE_TAG.exec(rest);
    if (opened !== null) {
      const node: XmlNode = {
        tag: opened[1] ?? '',
        attributes: readAttributes(opened[2] ?? ''),
        children: [],
        text: '',
      };
      parent.children.push(node);
      if (opened[3] === '') open.push(node);
      rest = rest.slice(opened[0].length);
    } else if (closed !== null) {
      if (open.length < 2 || parent.tag !== closed[1])
        throw new Error(`</${closed[1]}> closes <${parent.tag}>`);
      open.pop();
      rest = rest.slice(closed[0].length);
    } else if (rest.startsWith('<')) {
      throw new Error(`not a tag: ${rest.slice(0, 60)}`);
    } else {
      const end = rest.indexOf('<');
      const words = end === -1 ? rest : rest.slice(0, end);
      parent.text += decode(words);
      rest = rest.slice(words.length);
    }
  }
  const [only, second] = root.children;
  if (open.length !== 1 || only === undefined || second !== undefined || root.text.trim() !== '') {
    throw new Error('not one closed element');
  }
  return only;
}

function readAttributes(source: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const [, name = '', value = ''] of source.matchAll(ATTRIBUTE)) {
    if (found.has(name)) throw new Error(`${name} stands twice`);
    found.set(name, decode(value));
  }
  return found;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

function decode(words: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML 1.0 forbids
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/.test(words))
    throw new Error('a sign that XML forbids');
  return words.replace(/&([^;&]*);?/g, (whole, name: string) => {
    const sign = ENTITIES[name];
    if (sign === undefined || !whole.endsWith(';')) throw new Error(`no such entity: ${whole}`);
    return sign;
  });
}

/** The node and all under it. */
export const allNodes = (node: XmlNode): readonly XmlNode[] => [node, ...node.children.flatMap(allNodes)];
