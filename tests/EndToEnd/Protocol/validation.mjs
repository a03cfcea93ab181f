// Holds messages of the server against schemas made from the official protocol package's own types.
import { createGenerator } from 'ts-json-schema-generator';
import Ajv from 'ajv';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('.', import.meta.url));

function schemaOf(type) {
  const schema = createGenerator({
    path: folder + 'messages.ts', tsconfig: folder + 'tsconfig.json', type, skipTypeCheck: true, additionalProperties: false, topRef: true, strictTuples: true,
  }).createSchema(type);
  tighten(schema);
  return schema;
}

// The types say `number` where the protocol says an integer from 0 to 2^31 - 1: lines, characters, versions, counts.
const whole = new Set(['line', 'character', 'startLine', 'endLine', 'startCharacter', 'endCharacter', 'activeSignature', 'activeParameter', 'percentage', 'kind', 'severity']);

function tighten(node) {
  if (Array.isArray(node)) return node.forEach(tighten);
  if (node === null || typeof node !== 'object') return;
  for (const [name, value] of Object.entries(node.properties ?? {})) {
    if (whole.has(name) && value.type === 'number') Object.assign(value, { type: 'integer', minimum: 0, maximum: 2147483647 });
  }
  for (const [name, value] of Object.entries(node.definitions ?? {})) {
    if (name === 'uinteger') Object.assign(value, { type: 'integer', minimum: 0, maximum: 2147483647 });
    if (name === 'integer') Object.assign(value, { type: 'integer', minimum: -2147483648, maximum: 2147483647 });
  }
  Object.values(node).forEach(tighten);
}

export function createValidation() {
  const validators = new Map();
  for (const type of ['Results', 'Sent']) {
    const schema = schemaOf(type);
    const ajv = new Ajv({ strict: false, allErrors: false, allowUnionTypes: true });
    ajv.addSchema(schema, type);
    const holder = schema.definitions[type];
    for (const method of Object.keys(holder.properties)) {
      const pointer = `${type}#/definitions/${type}/properties/${method.replaceAll('~', '~0').replaceAll('/', '~1')}`;
      validators.set(`${type} ${method}`, ajv.compile({ $ref: encodeURI(pointer) }));
    }
  }

  const faults = [];
  const seen = new Map();
  function hold(type, method, value) {
    const key = `${type} ${method}`;
    seen.set(key, (seen.get(key) ?? 0) + 1);
    const validator = validators.get(key);
    if (!validator) faults.push(`${key}: nothing that the server should send`);
    else if (!validator(value)) {
      const first = validator.errors.at(-1);
      faults.push(`${key}: ${first.instancePath} ${first.message} in ${JSON.stringify(value).slice(0, 400)}`);
    }
  }

  return { result: (method, value) => hold('Results', method, value), sent: (method, value) => hold('Sent', method, value), faults, seen };
}
