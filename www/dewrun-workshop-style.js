// The style of what is shown once the second module is there.
const style = document.createElement("link");
style.rel = "stylesheet";
style.href = new URL("dewrun-workshop.css", document.querySelector("script[type=module]").src);
document.head.append(style);
