package program

import _ "embed"

// FileSchema is the JSON Schema (draft 2020-12) of a program file.
//
//go:embed testdata/program.schema.json
var FileSchema string
