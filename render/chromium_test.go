package render

import (
	"bufio"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A chromium is a headless browser that is told what to do through a pipe, in the
// DevTools protocol: messages of JSON that end in a zero byte.
type chromium struct {
	t       *testing.T
	to      *os.File
	replies chan cdpMessage
	last    int
}

// A cdpMessage is an answer, or tells of something that happened.
type cdpMessage struct {
	ID      int
	Method  string
	Session string `json:"sessionId"`
	Params  json.RawMessage
	Result  json.RawMessage
	Error   *struct{ Message string }
}

// A tab is a page in a browser, with what it complained of and asked for.
type tab struct {
	*chromium
	profile  string
	session  string
	problems []string
	requests []string
	loads    int
}

// startChromium starts a browser of its own; the test is skipped where none is
// installed.
func startChromium(t *testing.T) *chromium {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("chromium is not installed")
	}
	readTold, told, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	heard, writeHeard, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-dev-shm-usage",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(), "--remote-debugging-pipe")
	cmd.ExtraFiles = []*os.File{readTold, writeHeard}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	readTold.Close()
	writeHeard.Close()
	c := &chromium{t: t, to: told, replies: make(chan cdpMessage, 4096)}
	go c.listen(heard)
	t.Cleanup(func() {
		fmt.Fprintf(told, `{"id":1000000,"method":"Browser.close"}`+"\x00")
		told.Close()
		done := make(chan error, 1)
		go func() { done <- cmd.Wait() }()
		select {
		case <-done:
		case <-time.After(20 * time.Second):
			cmd.Process.Kill()
			<-done
		}
	})
	return c
}

func (c *chromium) listen(from *os.File) {
	defer close(c.replies)
	r := bufio.NewReader(from)
	for {
		text, err := r.ReadBytes(0)
		if err != nil {
			return
		}
		var m cdpMessage
		if json.Unmarshal(text[:len(text)-1], &m) == nil {
			c.replies <- m
		}
	}
}

// send asks the browser, and gives to heed what happens until it answers.
func (c *chromium) send(session, method string, params any, heed func(cdpMessage)) json.RawMessage {
	c.t.Helper()
	c.last++
	call := map[string]any{"id": c.last, "method": method}
	if params != nil {
		call["params"] = params
	}
	if session != "" {
		call["sessionId"] = session
	}
	text, err := json.Marshal(call)
	if err != nil {
		c.t.Fatal(err)
	}
	if _, err := c.to.Write(append(text, 0)); err != nil {
		c.t.Fatal(err)
	}
	for {
		m := c.next()
		if m.ID == c.last {
			if m.Error != nil {
				c.t.Fatalf("%s: %s", method, m.Error.Message)
			}
			return m.Result
		}
		heed(m)
	}
}

// next waits for a message; the limit only ends what hangs.
func (c *chromium) next() cdpMessage {
	c.t.Helper()
	select {
	case m, open := <-c.replies:
		if !open {
			c.t.Fatal("chromium ended")
		}
		return m
	case <-time.After(2 * time.Minute):
		c.t.Fatal("chromium says nothing")
	}
	return cdpMessage{}
}

// A screen is what a page is shown on.
type screen struct {
	width, height int
	touch, dark   bool
}

func (s screen) String() string {
	look := "light"
	if s.dark {
		look = "dark"
	}
	return fmt.Sprintf("%dx%d-%s", s.width, s.height, look)
}

type cdp map[string]any

// open shows a file in a tab.
func (c *chromium) open(s screen, path string) *tab {
	c.t.Helper()
	ignore := func(cdpMessage) {}
	var target struct {
		BrowserContextID string `json:"browserContextId"` // a profile of its own: what pages keep does not mix
		TargetID         string `json:"targetId"`
		SessionID        string `json:"sessionId"`
	}
	mustDecode(c.t, c.send("", "Target.createBrowserContext", nil, ignore), &target)
	mustDecode(c.t, c.send("", "Target.createTarget", cdp{"url": "about:blank", "browserContextId": target.BrowserContextID}, ignore), &target)
	mustDecode(c.t, c.send("", "Target.attachToTarget", cdp{"targetId": target.TargetID, "flatten": true}, ignore), &target)
	b := &tab{chromium: c, profile: target.BrowserContextID, session: target.SessionID}
	for _, domain := range []string{"Page", "Runtime", "Network", "Log"} {
		b.do(domain+".enable", nil)
	}
	b.show(s)
	b.load("file://" + path)
	return b
}

// show changes the screen.
func (b *tab) show(s screen) {
	b.t.Helper()
	look := "light"
	if s.dark {
		look = "dark"
	}
	b.do("Emulation.setDeviceMetricsOverride", cdp{"width": s.width, "height": s.height, "deviceScaleFactor": 1, "mobile": s.touch})
	b.do("Emulation.setTouchEmulationEnabled", cdp{"enabled": s.touch})
	b.do("Emulation.setEmulatedMedia", cdp{"features": []cdp{{"name": "prefers-color-scheme", "value": look}}})
}

func (b *tab) load(url string) {
	b.t.Helper()
	before := b.loads
	b.do("Page.navigate", cdp{"url": url})
	for b.loads == before {
		b.heed(b.next())
	}
}

func (b *tab) reload() {
	b.t.Helper()
	before := b.loads
	b.do("Page.reload", nil)
	for b.loads == before {
		b.heed(b.next())
	}
}

func (b *tab) do(method string, params any) json.RawMessage {
	b.t.Helper()
	return b.send(b.session, method, params, b.heed)
}

// heed keeps what a page must not do.
func (b *tab) heed(m cdpMessage) {
	switch m.Method {
	case "Page.loadEventFired":
		b.loads++
	case "Runtime.exceptionThrown", "Runtime.consoleAPICalled", "Log.entryAdded":
		b.problems = append(b.problems, m.Method+" "+string(m.Params))
	case "Network.requestWillBeSent":
		var p struct{ Request struct{ URL string } }
		if json.Unmarshal(m.Params, &p) == nil && !strings.HasPrefix(p.Request.URL, "data:") {
			b.requests = append(b.requests, p.Request.URL)
		}
	}
}

// eval runs a script and decodes what it comes to.
func (b *tab) eval(script string, into any) {
	b.t.Helper()
	var r struct {
		Result           struct{ Value json.RawMessage }
		ExceptionDetails json.RawMessage
	}
	mustDecode(b.t, b.do("Runtime.evaluate", cdp{"expression": script, "returnByValue": true, "awaitPromise": true, "userGesture": true}), &r)
	if r.ExceptionDetails != nil {
		b.t.Fatalf("%s: %s", script, r.ExceptionDetails)
	}
	if into != nil {
		mustDecode(b.t, r.Result.Value, into)
	}
}

func (b *tab) text(script string) string {
	b.t.Helper()
	var s string
	b.eval(script, &s)
	return s
}

func (b *tab) number(script string) float64 {
	b.t.Helper()
	var v float64
	b.eval(script, &v)
	return v
}

func (b *tab) holds(script string) bool {
	b.t.Helper()
	var v bool
	b.eval(script, &v)
	return v
}

// settle waits until the map rests and all is drawn.
func (b *tab) settle() {
	b.t.Helper()
	b.eval(`new Promise(done => { const wait = () => seen === drawn && !asked ? requestAnimationFrame(() => requestAnimationFrame(() => done())) : setTimeout(wait, 20); wait(); })`, nil)
}

// A finger or the mouse, at a point of the screen.
func (b *tab) tap(x, y float64) {
	b.t.Helper()
	b.do("Input.dispatchTouchEvent", cdp{"type": "touchStart", "touchPoints": []cdp{{"x": x, "y": y}}})
	b.do("Input.dispatchTouchEvent", cdp{"type": "touchEnd", "touchPoints": []cdp{}})
	b.eval(`new Promise(done => requestAnimationFrame(() => setTimeout(done)))`, nil)
}

func (b *tab) click(x, y float64) {
	b.t.Helper()
	for _, kind := range []string{"mousePressed", "mouseReleased"} {
		b.do("Input.dispatchMouseEvent", cdp{"type": kind, "x": x, "y": y, "button": "left", "clickCount": 1})
	}
}

// press presses a key; codes are those of Windows, by which browsers know keys
// that write nothing.
func (b *tab) press(key string) {
	b.t.Helper()
	codes := map[string]int{"Tab": 9, "Enter": 13, " ": 32, "ArrowLeft": 37, "ArrowUp": 38, "ArrowRight": 39, "ArrowDown": 40, "+": 187, "-": 189, "0": 48}
	down := cdp{"type": "keyDown", "key": key, "windowsVirtualKeyCode": codes[key]}
	switch key {
	case "Enter":
		down["text"] = "\r"
	case " ", "+", "-", "0":
		down["text"] = key
	}
	b.do("Input.dispatchKeyEvent", down)
	b.do("Input.dispatchKeyEvent", cdp{"type": "keyUp", "key": key, "windowsVirtualKeyCode": codes[key]})
}

// shoot keeps a picture of the page for people to look at, if a folder is named
// for it.
func (b *tab) shoot(name string, whole bool) {
	b.t.Helper()
	if *sheetsDir == "" {
		return
	}
	var shot struct{ Data string }
	mustDecode(b.t, b.do("Page.captureScreenshot", cdp{"format": "png", "captureBeyondViewport": whole}), &shot)
	picture, err := base64.StdEncoding.DecodeString(shot.Data)
	if err != nil {
		b.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(*sheetsDir, "page-"+name+".png"), picture, 0o644); err != nil {
		b.t.Fatal(err)
	}
}

func mustDecode(t *testing.T, text json.RawMessage, into any) {
	t.Helper()
	if err := json.Unmarshal(text, into); err != nil {
		t.Fatalf("%v in %.200s", err, text)
	}
}
