package cli

import "github.com/spf13/cobra"

// Commands lists every command as it is typed, without the word sley: "book add warp".
// The empty one is sley alone.
func Commands() []string {
	var out []string
	var walk func(cmd *cobra.Command, path string)
	walk = func(cmd *cobra.Command, path string) {
		out = append(out, path)
		for _, c := range cmd.Commands() {
			below := c.Name()
			if path != "" {
				below = path + " " + below
			}
			walk(c, below)
		}
	}
	walk(newRoot(World{}), "")
	return out
}
