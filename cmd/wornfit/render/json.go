package render

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"sort"
	"strconv"
	"strings"
)

// uncounted is the size from which a number stands for `not to be counted`;
// in JSON, which has no infinity, it is null, as is what is not a number.
const uncounted = 1e300

// JSON writes a value by its json tags, indented, in a fixed order, with a line
// end. Empty lists are [], never null. With ascii every other character is
// escaped.
func JSON(v any, ascii bool) ([]byte, error) {
	var raw, out bytes.Buffer
	if err := encode(&raw, reflect.ValueOf(v)); err != nil {
		return nil, err
	}
	if err := json.Indent(&out, raw.Bytes(), "", "  "); err != nil {
		return nil, err
	}
	out.WriteByte('\n')
	if !ascii {
		return out.Bytes(), nil
	}
	return []byte(escape(out.String())), nil
}

func encode(b *bytes.Buffer, v reflect.Value) error {
	switch v.Kind() {
	case reflect.Invalid:
		b.WriteString("null")
	case reflect.Pointer, reflect.Interface:
		return encode(b, v.Elem())
	case reflect.Float64:
		number(b, v.Float())
	case reflect.Int, reflect.Int64:
		b.WriteString(strconv.FormatInt(v.Int(), 10))
	case reflect.Bool:
		b.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.String:
		return text(b, v.String())
	case reflect.Slice:
		return list(b, v)
	case reflect.Map:
		return object(b, v)
	case reflect.Struct:
		return record(b, v)
	default:
		return fmt.Errorf("cannot write a %s as JSON", v.Kind())
	}
	return nil
}

func number(b *bytes.Buffer, f float64) {
	if math.IsNaN(f) || math.Abs(f) >= uncounted {
		b.WriteString("null")
		return
	}
	raw, _ := json.Marshal(f) // of a finite number there is no error
	b.Write(raw)
}

func text(b *bytes.Buffer, s string) error {
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	return e.Encode(s)
}

func list(b *bytes.Buffer, v reflect.Value) error {
	b.WriteByte('[')
	for i := range v.Len() {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := encode(b, v.Index(i)); err != nil {
			return err
		}
	}
	b.WriteByte(']')
	return nil
}

func object(b *bytes.Buffer, v reflect.Value) error {
	keys := v.MapKeys()
	sort.Slice(keys, func(i, k int) bool { return keys[i].String() < keys[k].String() })
	b.WriteByte('{')
	for i, k := range keys {
		if err := member(b, i > 0, k.String(), v.MapIndex(k)); err != nil {
			return err
		}
	}
	b.WriteByte('}')
	return nil
}

func record(b *bytes.Buffer, v reflect.Value) error {
	b.WriteByte('{')
	after := false
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "-" || strings.Contains(rest, "omitempty") && v.Field(i).IsZero() {
			continue
		}
		if name == "" {
			name = strings.ToLower(f.Name)
		}
		if err := member(b, after, name, v.Field(i)); err != nil {
			return err
		}
		after = true
	}
	b.WriteByte('}')
	return nil
}

func member(b *bytes.Buffer, after bool, name string, v reflect.Value) error {
	if after {
		b.WriteByte(',')
	}
	if err := text(b, name); err != nil {
		return err
	}
	b.WriteByte(':')
	return encode(b, v)
}

func escape(s string) string {
	var out strings.Builder
	for _, r := range s {
		switch {
		case r <= '~':
			out.WriteRune(r)
		case r <= 0xffff:
			fmt.Fprintf(&out, `\u%04x`, r)
		default:
			r -= 0x10000
			fmt.Fprintf(&out, `\u%04x\u%04x`, 0xd800+r>>10, 0xdc00+r&0x3ff)
		}
	}
	return out.String()
}
