package photo

import "bytes"

// sniff says by its first bytes of which type a file is: one that can be decoded, or the
// name of one that cannot.
func sniff(data []byte) (known format, foreign string) {
	for _, one := range []struct {
		begins string
		is     format
	}{
		{"\xff\xd8", jpegFile}, {"\x89PNG\r\n\x1a\n", pngFile}, {"GIF87a", gifFile}, {"GIF89a", gifFile},
	} {
		if bytes.HasPrefix(data, []byte(one.begins)) {
			return one.is, ""
		}
	}
	if name := within(data, "RIFF", 8); name == "WEBP" {
		return webpFile, ""
	}
	for _, one := range foreignFiles {
		if bytes.HasPrefix(data, []byte(one.begins)) {
			return format{}, one.name
		}
	}
	return format{}, boxed(data)
}

// foreignFiles are types that people take for photographs, by how their files begin.
var foreignFiles = []struct{ begins, name string }{
	{"II*\x00\x10\x00\x00\x00CR", "RAW"}, // the mark of a camera's own raw file behind the head of a TIFF
	{"II*\x00", "TIFF or RAW"},
	{"MM\x00*", "TIFF or RAW"},
	{"IIU\x00", "RAW"},
	{"IIRO", "RAW"},
	{"IIRS", "RAW"},
	{"MMOR", "RAW"},
	{"FOVb", "RAW"},
	{"FUJIFILMCCD-RAW", "RAW"},
	{"\xff\x0a", "JPEG XL"},
	{"\x00\x00\x00\x0cJXL ", "JPEG XL"},
	{"\x00\x00\x00\x0cjP  ", "JPEG 2000"},
	{"BM", "BMP"},
	{"%PDF-", "PDF"},
	{"<svg", "SVG"},
	{"<?xml", "SVG"},
}

// boxedFiles are types of the ISO base media file format (ISO/IEC 14496-12), by their major
// brand, as the registry of brands names them.
var boxedFiles = map[string]string{
	"heic": "HEIC", "heix": "HEIC", "heim": "HEIC", "heis": "HEIC", "hevc": "HEIC", "hevx": "HEIC", "mif1": "HEIC", "msf1": "HEIC",
	"avif": "AVIF", "avis": "AVIF", "crx ": "RAW", "qt  ": "MOV",
	"isom": "MP4", "iso2": "MP4", "mp41": "MP4", "mp42": "MP4", "3gp4": "MP4", "3gp5": "MP4", "M4V ": "MP4",
}

// boxed names a file whose first box says its brand, empty where there is none.
func boxed(data []byte) string {
	if len(data) < 12 || string(data[4:8]) != "ftyp" {
		return ""
	}
	return boxedFiles[string(data[8:12])]
}

// within gives the four bytes at a place of a file that begins so, empty where it does not.
func within(data []byte, begins string, at int) string {
	if !bytes.HasPrefix(data, []byte(begins)) || len(data) < at+4 {
		return ""
	}
	return string(data[at : at+4])
}
