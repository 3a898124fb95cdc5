// Drives the language server as an editor would, with vscode-languageserver-protocol as the client's side.
// Arguments: the command, a rule project without flaws, a rule file with a gap.
'use strict'

const { spawn } = require('node:child_process')
const fs = require('node:fs')
const os = require('node:os')
const path = require('node:path')
const { pathToFileURL } = require('node:url')
const rpc = require('vscode-languageserver-protocol/node')

const [command, project, flawed] = process.argv.slice(2)
const WAIT_MS = 30000
const EXIT_MS = 5000

let failed = 0
function report(name, passed, detail) {
  console.log(`${passed ? 'PASS' : 'FAIL'} ${name}${passed || detail === undefined ? '' : `: ${JSON.stringify(detail)}`}`)
  failed += passed ? 0 : 1
}

function equal(name, actual, expected) {
  report(name, JSON.stringify(actual) === JSON.stringify(expected), actual)
}

const pause = ms => new Promise(resolve => setTimeout(resolve, ms))

class Editor {
  constructor(folder, processId = process.pid) {
    this.folder = folder
    this.diagnostics = new Map()
    this.noise = ''
    this.hungUp = false
    this.process = spawn(command, ['serve', '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] })
    this.ended = new Promise(resolve => this.process.on('exit', (code, signal) => resolve(code ?? signal)))
    this.process.stderr.on('data', data => { this.noise += data })
    this.process.stdin.on('error', () => {})
    this.connection = rpc.createProtocolConnection(
      new rpc.StreamMessageReader(this.process.stdout), new rpc.StreamMessageWriter(this.process.stdin))
    this.connection.onError(error => this.hungUp || report('the stream holds only messages', false, String(error)))
    this.connection.onNotification(rpc.PublishDiagnosticsNotification.type,
      params => this.diagnostics.set(params.uri, params))
    this.connection.onRequest(rpc.RegistrationRequest.type, () => {})
    this.connection.onRequest(rpc.WorkDoneProgressCreateRequest.type, () => {})
    this.connection.onRequest(rpc.CodeLensRefreshRequest.type, () => {})
    this.connection.listen()
    this.processId = processId
  }

  async begin() {
    const result = await this.connection.sendRequest(rpc.InitializeRequest.type, {
      processId: this.processId,
      rootUri: null,
      workspaceFolders: [{ uri: pathToFileURL(this.folder).href, name: 'check' }],
      capabilities: {
        general: { positionEncodings: ['utf-16'] },
        textDocument: {
          completion: { completionItem: { snippetSupport: true } },
          publishDiagnostics: { relatedInformation: true, versionSupport: true }
        },
        window: { workDoneProgress: true },
        workspace: { workspaceEdit: { documentChanges: true }, codeLens: { refreshSupport: true }, workspaceFolders: true }
      }
    })
    this.connection.sendNotification(rpc.InitializedNotification.type, {})
    return result
  }

  uri(file) {
    return pathToFileURL(path.join(this.folder, file)).href
  }

  open(file, text) {
    this.connection.sendNotification(rpc.DidOpenTextDocumentNotification.type,
      { textDocument: { uri: this.uri(file), languageId: 'baywright', version: 1, text } })
  }

  change(file, version, contentChanges) {
    this.connection.sendNotification(rpc.DidChangeTextDocumentNotification.type,
      { textDocument: { uri: this.uri(file), version }, contentChanges })
  }

  ask(type, file, position, more = {}) {
    return this.connection.sendRequest(type, { textDocument: { uri: this.uri(file) }, ...(position && { position }), ...more })
  }

  codes(file) {
    return (this.diagnostics.get(this.uri(file))?.diagnostics ?? []).map(found => found.code)
  }

  async until(condition) {
    for (const end = Date.now() + WAIT_MS; Date.now() < end; await pause(10)) {
      if (condition()) {
        return true
      }
    }
    return false
  }
}

function place(text, word, behind = 0) {
  const before = text.slice(0, text.indexOf(word) + behind)
  return { line: before.split('\n').length - 1, character: before.length - before.lastIndexOf('\n') - 1 }
}

function copy(from) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'baywright-check-'))
  if (fs.statSync(from).isDirectory()) {
    fs.cpSync(from, folder, { recursive: true })
  } else {
    fs.copyFileSync(from, path.join(folder, path.basename(from)))
  }
  return folder
}

async function session() {
  const editor = new Editor(copy(project))
  const rules = fs.readFileSync(path.join(editor.folder, 'rules-draw.bay'), 'utf8')
  const result = await editor.begin()
  equal('initialize tells the server', result.serverInfo.name, 'Baywright')
  equal('positions are counted in UTF-16', result.capabilities.positionEncoding, 'utf-16')

  editor.open('rules-draw.bay', rules)
  const symbols = await editor.ask(rpc.DocumentSymbolRequest.type, 'rules-draw.bay')
  report('symbols of a document', symbols.length > 5 && symbols.some(symbol => symbol.name === 'How much it draws, asleep'))
  const wrong = place(rules, 'run draw', 'run draw'.length)
  editor.change('rules-draw.bay', 2, [{ range: { start: wrong, end: wrong }, text: 'r' }])
  report('a slip is told', await editor.until(() => editor.codes('rules-draw.bay').includes('unknown-name')))
  equal('with the version it was found in', editor.diagnostics.get(editor.uri('rules-draw.bay'))?.version, 2)

  const shown = editor.diagnostics.get(editor.uri('rules-draw.bay')).diagnostics
  const range = shown.find(found => found.code === 'unknown-name').range
  const actions = await editor.ask(rpc.CodeActionRequest.type, 'rules-draw.bay', undefined,
    { range, context: { diagnostics: shown } })
  const fix = actions.find(action => action.title === 'Write draw')
  report('a fix is offered', fix !== undefined, actions.map(action => action.title))
  equal('the fix names the version', fix?.edit.documentChanges[0].textDocument.version, 2)
  editor.change('rules-draw.bay', 3, fix.edit.documentChanges[0].edits.map(edit => ({ range: edit.range, text: edit.newText })))
  report('the fix puts it right', await editor.until(() => !editor.codes('rules-draw.bay').includes('unknown-name')))

  const proposals = await editor.ask(rpc.CompletionRequest.type, 'rules-draw.bay', place(rules, 'run draw', 'run dr'.length))
  report('proposals', proposals.items.some(item => item.label === 'draw'), proposals.items.map(item => item.label))
  const hover = await editor.ask(rpc.HoverRequest.type, 'rules-draw.bay', place(rules, 'run draw', 5))
  report('hover', hover.contents.value.startsWith('**test** `draw`'), hover)
  const definition = await editor.ask(rpc.DefinitionRequest.type, 'rules-draw.bay', place(rules, 'run draw', 5))
  equal('definition', definition.map(found => path.basename(found.uri)), ['tests.bay'])
  const references = await editor.ask(rpc.ReferencesRequest.type, 'rules-draw.bay', place(rules, 'run draw', 5),
    { context: { includeDeclaration: true } })
  report('references', references.length > 3, references.length)
  const highlights = await editor.ask(rpc.DocumentHighlightRequest.type, 'rules-draw.bay', place(rules, 'run draw', 5))
  report('highlights', highlights.length > 2, highlights.length)
  const prepared = await editor.ask(rpc.PrepareRenameRequest.type, 'rules-draw.bay', place(rules, 'run draw', 5))
  equal('rename is prepared', prepared.placeholder, 'draw')
  const edit = await editor.ask(rpc.RenameRequest.type, 'rules-draw.bay', place(rules, 'run draw', 5), { newName: 'current' })
  equal('rename changes every use', edit.documentChanges.reduce((sum, file) => sum + file.edits.length, 0), references.length)
  const refusal = await editor.ask(rpc.RenameRequest.type, 'rules-draw.bay', place(rules, 'run draw', 5), { newName: '1' })
    .then(() => 'nothing', error => error.message)
  report('rename refuses what is not a valid name', refusal.startsWith('`1` is not a valid name.'), refusal)
  report('folding', (await editor.ask(rpc.FoldingRangeRequest.type, 'rules-draw.bay')).length > 5)
  const colours = await editor.ask(rpc.SemanticTokensRequest.type, 'rules-draw.bay')
  report('colours', colours.data.length > 100 && colours.data.length % 5 === 0, colours.data.length)
  report('lenses', (await editor.ask(rpc.CodeLensRequest.type, 'tests.bay')).length > 5)
  equal('a file laid out well stays', await editor.ask(rpc.DocumentFormattingRequest.type, 'rules-draw.bay', undefined,
    { options: { tabSize: 2, insertSpaces: true } }), [])
  const found = await editor.connection.sendRequest(rpc.WorkspaceSymbolRequest.type, { query: 'draw' })
  report('symbols of the workspace', found.some(symbol => symbol.name === 'draw'))

  for (let version = 4; version < 504; version++) {
    editor.change('rules-draw.bay', version, [{ text: rules.slice(0, rules.length * (version - 4) / 500) }])
  }
  editor.change('rules-draw.bay', 504, [{ text: rules }])
  const started = Date.now()
  await editor.ask(rpc.DocumentSymbolRequest.type, 'rules-draw.bay')
  report('a flood of 500 edits is over soon', Date.now() - started < 5000, Date.now() - started)
  report('and leaves nothing behind', await editor.until(() => [...editor.diagnostics.values()]
    .every(file => file.diagnostics.every(one => one.severity > 1))))

  await editor.connection.sendRequest(rpc.ShutdownRequest.type)
  editor.connection.sendNotification(rpc.ExitNotification.type)
  equal('exit code after shutdown', await Promise.race([editor.ended, pause(EXIT_MS).then(() => 'late')]), 0)
  equal('nothing on standard error', editor.noise, '')
}

async function flaws() {
  const editor = new Editor(copy(flawed))
  await editor.begin()
  const file = path.basename(flawed)
  report('a flaw of the proofs is told', await editor.until(() => editor.codes(file).includes('gap')), editor.codes(file))
  const gap = editor.diagnostics.get(editor.uri(file)).diagnostics[0]
  report('with what shows it', gap.relatedInformation?.[0].message.includes('Fuse of the doors: whole'), gap)
  equal('by name', gap.source, 'baywright')
  fs.rmSync(path.join(editor.folder, file))
  editor.connection.sendNotification(rpc.DidChangeWatchedFilesNotification.type,
    { changes: [{ uri: editor.uri(file), type: rpc.FileChangeType.Deleted }] })
  report('a deleted file takes its diagnostics along', await editor.until(() => editor.codes(file).length === 0))
  editor.hungUp = true
  editor.process.stdin.end()
  equal('exit code at the end of the input', await Promise.race([editor.ended, pause(EXIT_MS).then(() => 'late')]), 1)
}

async function orphan() {
  const parent = spawn('sleep', ['60'])
  const editor = new Editor(copy(flawed), parent.pid)
  await editor.begin()
  parent.kill('SIGKILL')
  equal('exit code when the editor dies', await Promise.race([editor.ended, pause(EXIT_MS).then(() => 'late')]), 1)
}

async function terminated() {
  const editor = new Editor(copy(flawed))
  await editor.begin()
  const started = Date.now()
  editor.process.kill('SIGTERM')
  await Promise.race([editor.ended, pause(EXIT_MS)])
  report('a signal ends it at once', Date.now() - started < 2000, Date.now() - started)
}

async function all() {
  for (const part of [session, flaws, orphan, terminated]) {
    try {
      await part()
    } catch (error) {
      report(part.name, false, String(error.stack))
    }
  }
  console.log(failed === 0 ? 'All passed.' : `${failed} failed.`)
  process.exit(failed === 0 ? 0 : 1)
}

all()
