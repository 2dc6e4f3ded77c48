package record

import (
	"fmt"
	"reflect"
	"time"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// valued is one Value of a record, found by reflection: an independent look at
// what the tables filled.
type valued struct {
	path  string // by Go names
	field string // type and field
	state State
	at    verdict.Range
	text  string // as it would be written, if one plain value
}

// values returns every Value in a record.
func values(r *Record) []valued {
	var all []valued
	walk(reflect.ValueOf(*r), "", "", &all)
	return all
}

func walk(v reflect.Value, path, field string, all *[]valued) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem(), path, field, all)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i), field, all)
		}
	case reflect.Struct:
		if state := v.FieldByName("State"); state.IsValid() && state.Type() == reflect.TypeFor[State]() {
			*all = append(*all, valued{path, field, State(state.Uint()), v.MethodByName("At").Call(nil)[0].Interface().(verdict.Range), written(v.FieldByName("V").Interface())})
			return
		}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.IsExported() && f.Name != "Places" && f.Name != "Entry" {
				walk(v.Field(i), path+"."+f.Name, v.Type().Name()+"."+f.Name, all)
			}
		}
	}
}

// written returns a value as text; empty for lists.
func written(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case bool, int:
		return fmt.Sprint(v)
	case quantity.Quantity:
		return v.String()
	case quantity.WireSize:
		return v.String()
	case time.Time:
		return v.Format(time.DateOnly)
	}
	return ""
}
