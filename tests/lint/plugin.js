import { dirname, join, relative, resolve } from 'node:path';
import { roomOf, whyNot, whyNotNames } from './rooms.js';

const top = join(import.meta.dirname, '..', '..');

/**
 * oxlint plugin. `imports`: a file imports only what its room may import. `spreads`: no call takes a list's items as its
 * arguments, since each lies on the stack and about a hundred thousand overflow it.
 */
export default {
  meta: { name: 'rooms' },
  rules: {
    imports: { meta: { type: 'problem' }, create },
    spreads: { meta: { type: 'problem' }, create: createSpreads },
  },
};

/** What takes a list of any length in place of a call with its items. */
const insteadOf = {
  max: 'largestOf (core/model/extremes.ts)',
  min: 'leastOf (core/model/extremes.ts)',
  push: 'pushAll (core/model/pushAll.ts)',
  unshift: 'a list made anew',
  put: 'putAll',
  remove: 'removeAll',
};

function createSpreads(context) {
  if (!/^(core|electron|renderer)\//.test(fromTop(context.filename))) return {};
  return {
    CallExpression(node) {
      const name = nameOfCall(node.callee);
      if (!name || !Object.hasOwn(insteadOf, name)) return;
      const spread = node.arguments.find(({ type, argument }) => type === 'SpreadElement' && !isLiteral(argument));
      if (spread) {
        const message = `A list of any length must not become the arguments of ${name}: use ${insteadOf[name]}.`;
        context.report({ node: spread, message });
      }
    },
  };
}

/** `Math.max`, `list.push`, `put`: "max", "push", "put"; of other functions nothing. */
function nameOfCall({ type, name, object, property, computed }) {
  if (type === 'Identifier') return name === 'put' || name === 'remove' ? name : null;
  if (type !== 'MemberExpression' || computed) return null;
  const isMath = property.name === 'max' || property.name === 'min';
  if (isMath) return object.name === 'Math' ? property.name : null;
  return property.name === 'push' || property.name === 'unshift' ? property.name : null;
}

/** A list that is written out there, or one of two such. */
function isLiteral(node) {
  if (node.type === 'ConditionalExpression') return isLiteral(node.consequent) && isLiteral(node.alternate);
  return node.type === 'ArrayExpression';
}

function create(context) {
  const folder = dirname(context.filename);
  const room = roomOf(fromTop(context.filename));
  if (!room) return {};

  function check(node, source, isTypeOnly, names = []) {
    if (typeof source?.value !== 'string') return;
    const isPackage = !source.value.startsWith('.');
    const target = isPackage ? source.value : fromTop(resolve(folder, source.value));
    const message = whyNot(room, target, isPackage, isTypeOnly) ?? whyNotNames(room, target, names);
    if (message) context.report({ node, message });
  }

  const areTypes = ({ importKind, specifiers }) =>
    importKind === 'type' || (specifiers.length > 0 && specifiers.every(({ importKind: kind }) => kind === 'type'));
  return {
    ImportDeclaration: (node) => check(node, node.source, areTypes(node), node.specifiers.map(importedName)),
    ExportNamedDeclaration: (node) =>
      check(node, node.source, node.exportKind === 'type', node.specifiers.map(importedName)),
    ExportAllDeclaration: (node) => check(node, node.source, node.exportKind === 'type', ['*']),
    ImportExpression: (node) => check(node, node.source, false, ['*']),
    TSImportType: (node) => check(node, node.source ?? node.argument?.literal, true),
  };
}

/** The name, in its own file, of what is imported or exported on; `*` for all of it. */
function importedName({ type, imported, local }) {
  if (type === 'ImportNamespaceSpecifier') return '*';
  if (type === 'ImportDefaultSpecifier') return 'default';
  const { name, value } = imported ?? local;
  return name ?? value;
}

function fromTop(path) {
  return relative(top, path).replaceAll('\\', '/');
}
