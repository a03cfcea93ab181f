// Validates YAML files against the format's schemas with a validator that shares no code with TechLint.
//   node check-schemas.mjs SCHEMA_FOLDER FILE...
// Prints one JSON object: each schema and each file with the list of what is wrong with it, empty where all is well.
import { readFileSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { parseDocument } from 'yaml';

const [folder, ...files] = process.argv.slice(2);
const ajv = new Ajv2020.default({ strict: true, allErrors: true, validateSchema: true });
addFormats.default(ajv);

const schemas = {};
const validators = {};
for (const name of readdirSync(folder).filter(name => name.endsWith('.schema.json')).sort()) {
  const schema = JSON.parse(readFileSync(join(folder, name), 'utf8'));
  const isValid = schema.$schema === 'https://json-schema.org/draft/2020-12/schema' && ajv.validateSchema(schema);
  schemas[name] = isValid ? [] : tell(ajv.errors);
  try {
    validators[name] = ajv.compile(schema);
  } catch (fault) {
    schemas[name].push(fault.message);
  }
}

const kinds = [
  ['.technique.yaml', 'technique.schema.json'],
  ['.equipment.yaml', 'equipment.schema.json'],
  ['.requirements.yaml', 'requirement.schema.json'],
  ['techlint.yaml', 'settings.schema.json'],
];

const verdicts = {};
for (const file of files) {
  const document = parseDocument(readFileSync(file, 'utf8'), { version: '1.2', merge: true, uniqueKeys: true });
  const validate = validators[kinds.find(([ending]) => basename(file).endsWith(ending))?.[1]];
  if (document.errors.length > 0) verdicts[file] = document.errors.map(error => 'yaml: ' + error.message);
  else if (!validate) verdicts[file] = ['no schema for this file'];
  else verdicts[file] = validate(document.toJS()) ? [] : tell(validate.errors);
}

console.log(JSON.stringify({ schemas, files: verdicts }));

function tell(errors) {
  return errors ? errors.map(error => `${error.instancePath || '/'} ${error.message}`) : ['not a 2020-12 schema'];
}
