/**
 * The declarations of the public entry, in dist/types. Who installs the package has none of the libraries that it was made with, so
 * no declaration may ask for one: the type that a schema has only by inference is written out, and what the entry does not lead
 * to is left out.
 */
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import process from 'node:process';
import ts from 'typescript';

/** Where the inferred type is, and its name there. */
const INFERRED = { file: 'setup/schema/schema', name: 'ReadFile' };

const { NoTruncation, InTypeAlias, MultilineObjectLiterals } = ts.NodeBuilderFlags;
const printed = (node, file) => ts.createPrinter().printNode(ts.EmitHint.Unspecified, node, file);

/** What the compiler knows a type to be, as a declaration. */
function writtenOut(program, path, name) {
  const file = program.getSourceFile(path);
  const alias = file.statements.find((each) => ts.isTypeAliasDeclaration(each) && each.name.text === name);
  const checker = program.getTypeChecker();
  const type = checker.getTypeAtLocation(alias.name);
  const node = checker.typeToTypeNode(type, alias, NoTruncation | InTypeAlias | MultilineObjectLiterals);
  return `type ${name} = ${printed(node, file)};\n`;
}

/** The declarations of types alone, with one of them in other words. */
function withoutSchema(path, name, declaration) {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  return file.statements
    .filter((each) => ts.isTypeAliasDeclaration(each))
    .map((each) => (each.name.text === name ? declaration : each.getFullText().trimStart()))
    .join('\n');
}

/** The files that a declaration leads to, itself included. @throws an Error for one that asks for a package */
function reached(path, seen = new Set()) {
  if (seen.has(path)) return seen;
  seen.add(path);
  for (const { fileName } of ts.preProcessFile(readFileSync(path, 'utf8')).importedFiles) {
    if (!fileName.startsWith('.'))
      throw new Error(`${path} asks for ${fileName}, which nobody has who installs it`);
    reached(join(dirname(path), fileName.replace(/(\.d)?\.ts$/, '.d.ts')), seen);
  }
  return seen;
}

/** @returns whether the compiler found nothing wrong */
export function writeTypes(root, types = join(root, 'dist/types')) {
  const config = ts.getParsedCommandLineOfConfigFile(join(root, 'src/tsconfig.types.json'), {}, ts.sys);
  const program = ts.createProgram(config.fileNames, { ...config.options, outDir: types });
  const { diagnostics } = program.emit();
  for (const { messageText } of diagnostics)
    process.stderr.write(`${ts.flattenDiagnosticMessageText(messageText, '\n')}\n`);
  const path = join(types, `${INFERRED.file}.d.ts`);
  const declaration = writtenOut(program, join(root, `src/${INFERRED.file}.ts`), INFERRED.name);
  writeFileSync(path, withoutSchema(path, INFERRED.name, declaration));
  const kept = reached(join(types, 'quillpath.d.ts'));
  for (const name of readdirSync(types, { recursive: true }))
    if (name.endsWith('.ts') && !kept.has(join(types, name))) rmSync(join(types, name));
  return diagnostics.length === 0;
}
