package job

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"cornerslip/label/register"
)

// The words of the register that a command needs.
type (
	Register        = register.Register
	RegisterOptions = register.Options
	At              = register.At
)

// ErrNoRegister is returned where a register is needed and none was named.
var ErrNoRegister = errors.New(`which register? name its file, as in --register herbarium.db, or put it into the house file: [register] file = "herbarium.db"`)

// RegisterAddress returns the register that was named, else the house's; "" if
// there is none.
func (j *Job) RegisterAddress(given string) string {
	if given != "" {
		return given
	}
	return j.House.Register.File
}

// OpenRegister opens the register that was named, else the house's. The zero
// Upgrade of the options leaves one of an older version as it is.
func (j *Job) OpenRegister(ctx context.Context, given string, o RegisterOptions) (*Register, error) {
	address := j.RegisterAddress(given)
	if address == "" {
		return nil, ErrNoRegister
	}
	o.Network = o.Network || given == "" && j.House.Register.Network
	return register.Open(ctx, address, o)
}

// CreateRegister makes a new register and opens it.
func (j *Job) CreateRegister(ctx context.Context, given string, at At, o RegisterOptions) (*Register, error) {
	address := j.RegisterAddress(given)
	if address == "" {
		return nil, ErrNoRegister
	}
	o.Network = o.Network || given == "" && j.House.Register.Network
	return register.Create(ctx, address, at, o)
}

// SeriesName returns the series of a register that a command means: the one
// that was named, else that of the house's pattern, else the only one.
func (j *Job) SeriesName(ctx context.Context, r *Register, given string) (string, error) {
	all, err := r.Series(ctx)
	if err != nil {
		return "", err
	}
	names := make([]string, len(all))
	for i, s := range all {
		names[i] = s.Name
		if given == s.Name || given == "" && s.Pattern.String() == j.House.Numbers.Pattern {
			return s.Name, nil
		}
	}
	switch {
	case given != "" && len(all) > 0:
		return "", fmt.Errorf("the register %s has no series %s; it has %s", r.Address(), given, strings.Join(names, ", "))
	case len(all) == 0:
		return "", fmt.Errorf("the register %s has no series of numbers yet; add one, as in: cornerslip register series VDOURA-0000000", r.Address())
	case len(all) > 1:
		return "", fmt.Errorf("which series? the register %s has %s; say --series", r.Address(), strings.Join(names, ", "))
	}
	return names[0], nil
}
