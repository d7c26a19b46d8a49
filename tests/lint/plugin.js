import { dirname, join, relative, resolve } from 'node:path';
import { roomOf, whyNot, whyNotNames } from './rooms.js';

const top = join(import.meta.dirname, '..', '..');

/** oxlint plugin with one rule: a file imports only what its room may import. */
export default {
  meta: { name: 'rooms' },
  rules: { imports: { meta: { type: 'problem' }, create } },
};

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
