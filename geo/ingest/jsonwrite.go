package ingest

import "unicode/utf8"

// appendCompact writes value without the blanks between its parts.
func appendCompact(dst, value []byte) []byte {
	for i := 0; i < len(value); {
		switch c := value[i]; {
		case c == '"':
			end := stringEnd(value, i)
			dst = append(dst, value[i:end]...)
			i = end
		case isBlank(c):
			i++
		default:
			dst = append(dst, c)
			i++
		}
	}
	return dst
}

// appendString writes s in quotes.
func appendString(dst []byte, s string) []byte {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c >= utf8.RuneSelf || c == '"' || c == '\\' {
			return append(dst, marshal(s)...)
		}
	}
	dst = append(dst, '"')
	dst = append(dst, s...)
	return append(dst, '"')
}

// appendMember writes a name and its value.
func appendMember(dst []byte, m Member) []byte {
	dst = append(appendString(dst, m.Name), ':')
	return appendCompact(dst, m.Value)
}

// appendObject writes an object without blanks.
func appendObject(dst []byte, members []Member) []byte {
	dst = append(dst, '{')
	for i, m := range members {
		if i > 0 {
			dst = append(dst, ',')
		}
		dst = appendMember(dst, m)
	}
	return append(dst, '}')
}

// appendArray writes an array; one writes each of its items.
func appendArray[T any](dst []byte, items []T, one func([]byte, T) []byte) []byte {
	dst = append(dst, '[')
	for i, item := range items {
		if i > 0 {
			dst = append(dst, ',')
		}
		dst = one(dst, item)
	}
	return append(dst, ']')
}

// appendText writes text as it is.
func appendText(dst, text []byte) []byte { return append(dst, text...) }
