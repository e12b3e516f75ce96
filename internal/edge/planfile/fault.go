package planfile

import (
	"errors"
	"fmt"

	"sley/internal/trade/problem"
)

// Fault is why a document could not be read, or not be changed: a problem with
// its code, the path in the document, what was read there, and the figures for
// its words.
type Fault struct{ problem.Problem }

// Error says so for the log of a program; people read the words of the problem.
func (f *Fault) Error() string {
	return fmt.Sprintf("%s at %q, read %q %v", f.Code, f.Path, f.Read, f.Args)
}

func faultOf(code, path, read string, args problem.Args) *Fault {
	return &Fault{problem.Problem{Code: code, Path: path, Read: read, Args: args}}
}

// deepFault is of values that lie too deep.
func deepFault(path string) *Fault {
	return faultOf("file.deep", path, "", problem.Args{"most": deepest})
}

// syntaxFault is of a text that is no path, whose characters count from 1.
func syntaxFault(path string, err error) *Fault {
	var f *problem.PathFault
	if !errors.As(err, &f) {
		panic(fmt.Sprintf("internal error: a path failed otherwise: %v", err))
	}
	return faultOf("path.syntax", "", path, problem.Args{"at": f.At + 1})
}
