package cli

import (
	"io"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

func must(err error) {
	if err != nil {
		panic("internal error: " + err.Error())
	}
}

// planFiles completes the names of plan files.
func planFiles(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}

func unitValues(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	out := []string{"metric", "imperial"}
	for _, kind := range app.UnitKinds() {
		for _, unit := range present.UnitWords()[kind] {
			out = append(out, kind+"="+unit)
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}

// findValues completes --find with the paths of the plan named.
func findValues(w World) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) == 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		w.Err = io.Discard
		from, err := w.read(args[0], record.Warp)
		if err != nil {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return app.FindPaths(from.Name, from.Text), cobra.ShellCompDirectiveNoFileComp
	}
}

// fixed completes a flag with a list of values.
func fixed(values []string) cobra.CompletionFunc {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return values, cobra.ShellCompDirectiveNoFileComp
	}
}
