package main

import "github.com/urfave/cli/v2"

// refuseIdle refuses flags that are given and play no part, and says why.
func refuseIdle(c *cli.Context, why string, flags ...string) error {
	for _, name := range flags {
		if c.IsSet(name) {
			return usageErrorf("--%s plays no part: %s", name, why)
		}
	}
	return nil
}
