/**
 * The declarations of the public entry, in dist/types. Who installs the package has none of the libraries that it was made with, so
 * no declaration may ask for one: the type that a schema has only by inference is written out, and what the entry does not lead
 * to is left out.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import process from 'node:process';
import ts from 'typescript';

/** Where the inferred type is, and its name there. */
const INFERRED = { file: join('setup', 'schema', 'schema.ts'), name: 'ReadFile' };

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
const withoutSchema = (text, name, declaration) =>
  ts
    .createSourceFile('schema.d.ts', text, ts.ScriptTarget.Latest, true)
    .statements.filter((each) => ts.isTypeAliasDeclaration(each))
    .map((each) => (each.name.text === name ? declaration : each.getFullText().trimStart()))
    .join('\n');

/** What a module declares. @throws an Error for what the compiler has against it */
function declarationOf(program, path) {
  const file = program.getSourceFile(path);
  if (file === undefined) throw new Error(`there is no ${path} to declare`);
  let text = '';
  const { diagnostics } = program.emit(
    file,
    (_, written) => {
      text = written;
    },
    undefined,
    true,
  );
  if (diagnostics.length > 0)
    throw new Error(ts.flattenDiagnosticMessageText(diagnostics[0].messageText, '\n'));
  if (path.endsWith(INFERRED.file))
    return withoutSchema(text, INFERRED.name, writtenOut(program, path, INFERRED.name));
  return text;
}

/** Write them below a folder. @returns whether it could be done; why not has been printed */
export function writeTypes(root, folder = join(root, 'dist/types')) {
  const source = join(root, 'src');
  const config = ts.getParsedCommandLineOfConfigFile(join(source, 'tsconfig.types.json'), {}, ts.sys);
  const program = ts.createProgram(config.fileNames, config.options);
  const paths = new Set([join(source, 'quillpath.ts')]);
  try {
    // Grows while it is walked: what a declaration leads to is declared as well.
    for (const path of paths) {
      const text = declarationOf(program, path);
      for (const { fileName } of ts.preProcessFile(text).importedFiles) {
        if (!fileName.startsWith('.'))
          throw new Error(`${path} asks for ${fileName}, which who installs it lacks`);
        paths.add(join(dirname(path), fileName));
      }
      const target = join(folder, relative(source, path).replace(/\.ts$/, '.d.ts'));
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(target, text);
    }
    return true;
  } catch (error) {
    process.stderr.write(`${error.message}\n`);
    return false;
  }
}
